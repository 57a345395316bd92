import type { Command } from 'commander';
import { libraryHelp } from './library-option.js';
import { countOption } from './numbers.js';
import { nameOption } from './single-options.js';

export interface LibraryOptions {
  readonly library?: string;
  readonly replace?: true;
  readonly name?: string;
  readonly seam?: number;
  readonly json?: true;
}

/** `library`: your own stitches, ornaments and treatments. */
export function declareLibrary(program: Command): void {
  const library = program
    .command('library')
    .summary('your own stitches, ornaments and treatments: copy, take, save, check')
    .description('Keeps your own stitches, ornaments and treatments, which stand before the built-in ones.');
  const own = (command: Command) =>
    command.option('--library <folder>', libraryHelp, nameOption('--library'));
  const saving = (command: Command) =>
    own(command)
      .option('--replace', 'replace one of your own that has this name')
      .option('--json', 'print one JSON document');

  saving(library.command('copy'))
    .summary('copies a stitch, ornament or treatment into your library, to be varied')
    .argument('<name>', 'what to copy')
    .argument(
      '[new-name]',
      'its name there (default: the same, so that yours stands before the built-in one)',
    )
    .action(async (name: string, newName: string | undefined, options: LibraryOptions) => {
      await (await actions()).copyEntry(name, newName, options);
    });
  saving(library.command('take'))
    .summary('takes a stitch from a drawing of one repeat')
    .argument('<drawing>', 'an SVG: a straight line with the id "seam", and the thread as lines')
    .argument('<name>', 'its name in your library')
    .action(async (drawing: string, name: string, options: LibraryOptions) => {
      await (await actions()).takeStitch(drawing, name, options);
    });
  saving(library.command('save'))
    .summary('saves the treatment of a seam of a dressing')
    .argument('<dressing>', 'a saved dressing')
    .argument('<name>', 'its name in your library')
    .option('--seam <n>', 'whose treatment (default: the first)', countOption('--seam', 1, 9999))
    .action(async (dressing: string, name: string, options: LibraryOptions) => {
      await (await actions()).saveTreatment(dressing, name, options);
    });
  own(library.command('check'))
    .summary('checks files, or all that you have: every mistake, and how they sew over all their sizes')
    .argument('[names...]', 'files, or names in the dictionary (default: everything in your library)')
    .option('--json', 'print one JSON document')
    .action(async (names: string[], options: LibraryOptions) => {
      await (await import('./check-library.js')).checkLibrary(names, options);
    });
}

const actions = () => import('./keep-library.js');
