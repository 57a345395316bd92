import { basename } from 'node:path';
import type { Command } from 'commander';
import { CLOTHS, type Cloth, LIMITS } from '../check/density/limits.js';
import type { CheckReport } from '../report/check-report.js';
import { choiceOption } from './choices.js';
import { type FabricOption, fabricsOption } from './fabric-option.js';
import { fileKind, readInput } from './input-file.js';
import { libraryHelp } from './library-option.js';
import { print, printJson, settleStatus } from './print.js';
import { nameOption } from './single-options.js';

interface Options {
  readonly cloth: Cloth;
  readonly fabric?: readonly FabricOption[];
  readonly library?: string;
  readonly json?: true;
}

/** `check`: what can be told of the stitches before any thread is used. */
export function declareCheck(program: Command): void {
  program
    .command('check')
    .summary('how dense the stitches are, and what to look at before sewing')
    .description(
      'Measures the stitches of a saved dressing or of any stitch file: holes, threads one over another, cloth under thread, lengths; of a dressing also how its threads show on the fabrics.',
    )
    .argument('<file>', 'a saved dressing (.dressing.json) or a stitch file (.dst)')
    .option(
      '--cloth <kind>',
      'firm (cotton for quilts, velvet) or fine (fine cotton, silk, satin)',
      choiceOption('--cloth', CLOTHS),
      'firm',
    )
    .option(
      '--fabric <patches=colors...>',
      'of a dressing: fabrics of patches as dress takes them, such as 3=#7a2f3b, to see how threads would show on them',
      fabricsOption('--fabric'),
    )
    .option('--library <folder>', libraryHelp, nameOption('--library'))
    .option('--json', 'print one JSON document')
    .action(check);
}

async function check(path: string, options: Options): Promise<void> {
  const bytes = await readInput(path);
  const kind = fileKind(path, bytes);
  if (kind === 'drawing') {
    const { InputError } = await import('../input-error.js');
    throw new InputError(
      'nothing-sewn',
      path,
      'is a drawing, in which nothing is sewn',
      'dress it first, and check the stitch file or the dressing that it makes',
    );
  }
  const report =
    kind === 'stitch-file' ? await ofStitchFile(path, bytes, options) : await ofDressing(path, options);
  const { checkText } = await import('../report/check-report.js');
  await (options.json ? printJson(report) : print(checkText(basename(path), report)));
  settleStatus(report.findings);
}

async function ofStitchFile(path: string, bytes: Uint8Array, { cloth }: Options): Promise<CheckReport> {
  const { readDst } = await import('../formats/dst-read.js');
  const { examineRecords } = await import('../check/examine.js');
  const { smallestHoop } = await import('../check/hoops.js');
  const { accountOfRecords } = await import('../design/account.js');
  const { checkReport } = await import('../report/check-report.js');
  const { records } = readDst(bytes, basename(path));
  const { widthMm, heightMm } = accountOfRecords(records).totals;
  const hoop = smallestHoop({ width: widthMm, height: heightMm });
  return checkReport(examineRecords(records, LIMITS[cloth]), hoop, []);
}

async function ofDressing(path: string, { cloth, library, fabric }: Options): Promise<CheckReport> {
  const { readWork } = await import('./dress-from-file.js');
  const { inSaved } = await import('./dress-work.js');
  const { examineDressed } = await import('../examine-dressed.js');
  const { dress } = await import('../dress.js');
  const { hoopFor } = await import('../check/hoops.js');
  const { checkReport } = await import('../report/check-report.js');
  const { threadLook } = await import('../thread-look.js');
  const { loadDifference } = await import('../color/difference.js');
  const { work, dictionary } = await readWork(path, { library, fabric });
  const dressed = await inSaved(work.saved, () => dress(work.block, work.dressing, dictionary));
  const look = threadLook(dressed, await loadDifference());
  const hoop = hoopFor(work.dressing.hoop, dressed.field);
  return checkReport(examineDressed(dressed, LIMITS[cloth]), hoop, dressed.findings, look);
}
