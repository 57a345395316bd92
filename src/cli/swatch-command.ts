import type { Command } from 'commander';
import { libraryHelp } from './library-option.js';
import { lengthOption } from './numbers.js';
import { nameOption } from './single-options.js';
import type { Terminal } from './terminal.js';

export interface SwatchOptions {
  readonly repeat?: number;
  readonly width?: number;
  readonly library?: string;
  readonly out?: string;
  readonly json?: true;
}

/** `swatch`: one stitch on sample seams, drawn, or as a stitch file to sew on scrap. */
export function declareSwatch(program: Command, terminal: Terminal): void {
  program
    .command('swatch')
    .summary('a stitch or treatment on sample seams, an ornament on a patch: drawn, or to sew on scrap')
    .argument('<name>', 'a stitch, an ornament or a treatment of the dictionary')
    .option('--repeat <mm>', 'wanted length of a repeat', lengthOption('--repeat', 1, 60))
    .option('--width <mm>', 'width of the stitch across the seam', lengthOption('--width', 1, 40))
    .option('--library <folder>', libraryHelp, nameOption('--library'))
    .option(
      '--out <file>',
      'what to write: .svg, .png, .dst, .json (needle points) or .txt (report)',
      nameOption('--out'),
    )
    .option('--json', 'print one JSON document')
    .action(async (name: string, options: SwatchOptions) => {
      const { sewSwatch } = await import('./sew-swatch.js');
      await sewSwatch(name, options, terminal);
    });
}
