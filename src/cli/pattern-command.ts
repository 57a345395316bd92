import type { Command } from 'commander';
import type { PaperName } from '../sheet/page-sizes.js';
import { choiceOption } from './choices.js';
import type { DressOptions } from './dress-command.js';
import type { Terminal } from './terminal.js';
import { declareWorkOptions } from './work-options.js';

export interface PatternCommandOptions extends Omit<DressOptions, 'paper'> {
  readonly mirror?: true;
  readonly paper?: PaperName;
}

/** `pattern`: what a needlewoman marks on the cloth to work the block by hand. */
export function declarePattern(program: Command, terminal: Terminal): void {
  const command = program
    .command('pattern')
    .summary('a pattern at actual size, to mark on the cloth and work by hand')
    .description(
      'Writes the pattern of a saved dressing, or of a block dressed by the same options as with dress: seams, needle points ' +
        'and stitches at actual size, over several pages where one is too small. Of a saved dressing --seam marks these seams only.',
    )
    .argument('<block>', 'a saved dressing (.dressing.json), a drawing (.svg) or a stitch file (.dst)');
  declareWorkOptions(command)
    .option('--mirror', 'left and right exchanged, for what is laid face down and ironed on')
    .option(
      '--paper <size>',
      'of the pages (.pdf): a4 or letter (default: a4)',
      choiceOption('--paper', ['a4', 'letter']),
    )
    .option('--out <file...>', 'where to write it: .pdf in pages, .svg on one sheet')
    .option('--json', 'print one JSON document')
    .action(async (path: string, options: PatternCommandOptions) => {
      const { patternFromFile } = await import('./pattern-from-file.js');
      await patternFromFile(path, options, terminal);
    });
}
