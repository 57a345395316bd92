import type { Command } from 'commander';
import { libraryHelp } from './library-option.js';
import { print, printJson } from './print.js';
import { nameOption } from './single-options.js';

interface Options {
  readonly library?: string;
  readonly json?: true;
}

/** `stitches`: the dictionary, or one thing in it with its parameters. */
export function declareStitches(program: Command): void {
  program
    .command('stitches')
    .summary('the dictionary: stitches, ornaments and treatments, or one of them with its parameters')
    .argument('[name]', 'one of them')
    .option('--library <folder>', libraryHelp, nameOption('--library'))
    .option('--json', 'print one JSON document')
    .action(async (name: string | undefined, options: Options) => {
      const { loadDictionary } = await import('./dictionary.js');
      const { askedFor } = await import('./asked-for.js');
      const { dictionaryReport, dictionaryText, entryText } = await import('../report/dictionary-report.js');
      const dictionary = await loadDictionary(options.library);
      const shown = name === undefined ? dictionary : await askedFor(dictionary, name);
      const report = dictionaryReport(shown, dictionary);
      await (options.json
        ? printJson(report)
        : print(name === undefined ? dictionaryText(report, dictionary) : entryText(report)));
    });
}
