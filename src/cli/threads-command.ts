import type { Command } from 'commander';
import { type FabricOption, fabricsOption } from './fabric-option.js';
import { libraryHelp } from './library-option.js';
import { countOption } from './numbers.js';
import { nameOption } from './single-options.js';
import type { Terminal } from './terminal.js';

export interface ThreadsOptions {
  readonly stash?: string;
  readonly palette?: number;
  readonly changes?: number;
  readonly fabric?: readonly FabricOption[];
  readonly library?: string;
  readonly save?: string;
  readonly json?: true;
}

/** `threads`: a maker's own threads for a saved dressing. */
export function declareThreads(program: Command, terminal: Terminal): void {
  program
    .command('threads')
    .summary('chooses from your own threads the best for every treatment of a dressing')
    .description(
      'Chooses from a list of your own threads the best for every treatment and ornament of a saved dressing: seen on its fabrics, as heavy as asked, unlike what it meets.',
    )
    .argument('<dressing>', 'a saved dressing (.dressing.json)')
    .option(
      '--stash <file>',
      'your threads: a .csv file with columns name and color, and code, weight and finish if you like',
      nameOption('--stash'),
    )
    .option('--palette <n>', 'use so many threads at most', countOption('--palette', 1, 1000))
    .option('--changes <n>', 'change thread so many times at most', countOption('--changes', 0, 9999))
    .option(
      '--fabric <patches=colors...>',
      'fabrics of patches as dress takes them, such as 3=#7a2f3b',
      fabricsOption('--fabric'),
    )
    .option('--library <folder>', libraryHelp, nameOption('--library'))
    .option(
      '--save <file>',
      'keep the dressing in these threads in a .dressing.json file',
      nameOption('--save'),
    )
    .option('--json', 'print one JSON document')
    .action(async (path: string, options: ThreadsOptions) => {
      const { chooseThreads } = await import('./choose-threads.js');
      await chooseThreads(path, options, terminal);
    });
}
