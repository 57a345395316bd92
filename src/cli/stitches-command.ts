import type { Command } from 'commander';
import { print, printJson } from './print.js';

/** `stitches`: the dictionary, or one stitch with its parameters. */
export function declareStitches(program: Command): void {
  program
    .command('stitches')
    .summary('the dictionary of stitches, or one of them and its parameters')
    .argument('[name]', 'one stitch')
    .option('--json', 'print one JSON document')
    .action(async (name: string | undefined, options: { json?: true }) => {
      const { loadLibrary } = await import('./library.js');
      const { findStitch } = await import('../stitches/library.js');
      const { stitchesReport, stitchesText, stitchText } = await import('../report/stitches-report.js');
      const library = [...loadLibrary().values()];
      const stitches = name === undefined ? library : [findStitch(library, name)];
      if (options.json) printJson(stitchesReport(stitches));
      else print(name === undefined ? stitchesText(stitches) : stitchText(stitches[0]));
    });
}
