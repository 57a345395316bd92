import type { Command } from 'commander';
import type { DressOptions } from './dress-command.js';
import { declareSheetOptions } from './sheet-options.js';
import type { Terminal } from './terminal.js';
import { declareWorkOptions } from './work-options.js';

/** `sheet`: the printed page that goes to the machine. */
export function declareSheet(program: Command, terminal: Terminal): void {
  const command = program
    .command('sheet')
    .summary('the sew sheet of a dressed block as PDF: to pin beside the machine')
    .description(
      'Writes the sew sheet of a saved dressing, or of a block dressed by the same options as with dress: ' +
        'the picture in the hoop, and stop by stop what is sewn and where to halt.',
    )
    .argument('<block>', 'a saved dressing (.dressing.json), a drawing (.svg) or a stitch file (.dst)');
  declareSheetOptions(declareWorkOptions(command))
    .option('--out <file...>', 'where to write the sheet (.pdf)')
    .option('--json', 'print one JSON document')
    .action(async (path: string, options: DressOptions) => {
      const { sheetFromFile } = await import('./sheet-from-file.js');
      await sheetFromFile(path, options, terminal);
    });
}
