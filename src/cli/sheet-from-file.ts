import { InputError } from '../input-error.js';
import { sheetText } from '../sheet/sheet-text.js';
import type { DressOptions } from './dress-command.js';
import { dressAsAsked } from './dress-from-file.js';
import { inSaved } from './dress-work.js';
import { writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { settleStatus } from './print.js';
import { renderSheet } from './render-sheet.js';
import type { Terminal } from './terminal.js';

/** Dresses a block or a saved dressing, writes its sew sheet and prints what is on it. */
export async function sheetFromFile(path: string, options: DressOptions, terminal: Terminal): Promise<void> {
  const outputs = (options.out ?? []).map((name) => ({ path: name, ending: outputKind(name, ['.pdf']) }));
  if (outputs.length === 0)
    throw new InputError('no-output', '--out', 'is not given', 'name the sheet, such as --out sheet.pdf');
  const { work, dressed, report } = await dressAsAsked(path, options, outputs, terminal.progress);
  terminal.progress(0, 0, 'drawing');
  const { bytes, told } = await inSaved(work.saved, () => renderSheet(dressed, report, options));
  terminal.progress(0, 0, 'writing');
  await writeOutputs(
    outputs.map((output) => ({ path: output.path, content: bytes })),
    () =>
      options.json
        ? terminal.printJson({ ...report, sheet: told })
        : terminal.print(sheetText(report, told, terminal.paint)),
  );
  settleStatus(report.findings);
}
