import { InputError } from '../input-error.js';
import { sheetText } from '../sheet/sheet-text.js';
import type { DressOptions } from './dress-command.js';
import { dressAsAsked } from './dress-from-file.js';
import { inSaved } from './dress-work.js';
import { writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { print, printJson, settleStatus } from './print.js';
import { renderSheet } from './render-sheet.js';

/** Dresses a block or a saved dressing, writes its sew sheet and prints what is on it. */
export async function sheetFromFile(path: string, options: DressOptions): Promise<void> {
  const outputs = (options.out ?? []).map((name) => ({ path: name, ending: outputKind(name, ['.pdf']) }));
  if (outputs.length === 0)
    throw new InputError('no-output', '--out', 'is not given', 'name the sheet, such as --out sheet.pdf');
  const { work, dressed, report } = await dressAsAsked(path, options, outputs);
  const { bytes, told } = await inSaved(work.saved, () => renderSheet(dressed, report, options));
  await writeOutputs(
    outputs.map((output) => ({ path: output.path, content: bytes })),
    () => (options.json ? printJson({ ...report, sheet: told }) : print(sheetText(report, told))),
  );
  settleStatus(report.findings);
}
