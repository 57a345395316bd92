import type { Command } from 'commander';
import { libraryHelp } from './library-option.js';
import { countOption } from './numbers.js';
import { declareSheetOptions, type SheetOptions } from './sheet-options.js';
import { nameOption } from './single-options.js';
import type { Terminal } from './terminal.js';

export interface SamplerOptions extends Pick<SheetOptions, 'paper' | 'picture'> {
  readonly from: number;
  readonly library?: string;
  readonly out?: string[];
  readonly json?: true;
}

/** `sampler`: the treatments of a dressing, once each, to sew on scrap. */
export function declareSampler(program: Command, terminal: Terminal): void {
  const command = program
    .command('sampler')
    .summary('every treatment of a dressing once, numbered, to sew on scrap before the block')
    .description(
      'Sews every treatment of a saved dressing once along a line of 60 mm, numbered, in one sewing field.',
    )
    .argument('<dressing>', 'a saved dressing (.dressing.json)')
    .option(
      '--from <n>',
      'begin with this one, where one sewing field does not take all',
      countOption('--from', 1, 9999),
      1,
    )
    .option('--library <folder>', libraryHelp, nameOption('--library'))
    .option(
      '--out <file...>',
      'what to write: .dst, .svg, .png, .json (needle points), .csv (color stops), .txt (report), .pdf (sew sheet)',
    )
    .option('--json', 'print one JSON document');
  declareSheetOptions(command).action(async (path: string, options: SamplerOptions) => {
    const { sewSampler } = await import('./sew-sampler.js');
    await sewSampler(path, options, terminal);
  });
}
