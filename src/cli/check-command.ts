import { basename } from 'node:path';
import type { Command } from 'commander';
import { baseName } from '../formats/base-name.js';
import type { Progress } from '../progress.js';
import type { CheckReport } from '../report/check-report.js';
import { type FabricOption, fabricsOption } from './fabric-option.js';
import { fileKind, readInput } from './input-file.js';
import { libraryHelp } from './library-option.js';
import { declareLimits, densityByOptions, type LimitOptions } from './limits-option.js';
import { checkOutputs, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import {
  checkPictureOptions,
  declarePictureOptions,
  type PictureOptions,
  refuseSeamMarks,
} from './picture-options.js';
import { settleStatus } from './print.js';
import { nameOption } from './single-options.js';
import type { Terminal } from './terminal.js';

interface Options extends PictureOptions, LimitOptions {
  readonly fabric?: readonly FabricOption[];
  readonly library?: string;
  readonly out?: string[];
  readonly json?: true;
}

/** `check`: what can be told of the stitches before any thread is used. */
export function declareCheck(program: Command, terminal: Terminal): void {
  const command = program
    .command('check')
    .summary('how dense the stitches are, and what to look at before sewing')
    .description(
      'Measures the stitches of a saved dressing or of any stitch file: holes, threads one over another, cloth under thread, lengths; of a dressing also how its threads show on the fabrics.',
    )
    .argument('<file>', 'a saved dressing (.dressing.json) or a stitch file (.dst)')
    .option(
      '--fabric <patches=colors...>',
      'of a dressing: fabrics of patches as dress takes them, such as 3=#7a2f3b, to see how threads would show on them',
      fabricsOption('--fabric'),
    )
    .option('--library <folder>', libraryHelp, nameOption('--library'))
    .option('--out <file...>', 'pictures of what is measured: .svg, .png')
    .option('--json', 'print one JSON document');
  declarePictureOptions(declareLimits(command), USUAL).action((path: string, options: Options) =>
    check(path, options, terminal),
  );
}

/** What pictures show when nothing is said. */
const USUAL = 'density';

async function check(path: string, options: Options, terminal: Terminal): Promise<void> {
  const outputs = (options.out ?? []).map((name) => ({
    path: name,
    said: `--out ${name}`,
    ending: outputKind(name, ['.svg', '.png']),
  }));
  checkOutputs(outputs, [path]);
  checkPictureOptions(
    options,
    outputs.map(({ ending }) => ending),
  );
  terminal.progress(0, 0, 'reading');
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
  const { report, picture } =
    kind === 'stitch-file'
      ? await ofStitchFile(path, bytes, options)
      : await ofDressing(path, options, terminal.progress);
  terminal.progress(0, 0, 'drawing');
  const files = await Promise.all(
    outputs.map(async ({ ending, ...named }) => ({
      ...named,
      content: ending === '.png' ? await toPng(await picture()) : await picture(),
    })),
  );
  const { checkText } = await import('../report/check-report.js');
  const made = outputs.length ? `\n\nMade ${outputs.map((one) => one.path).join(', ')}` : '';
  await writeOutputs(files, () =>
    options.json
      ? terminal.printJson(report)
      : terminal.print(checkText(basename(path), report, terminal.paint) + made),
  );
  settleStatus(report.findings);
}

async function toPng(picture: string): Promise<Uint8Array> {
  const { rasterize } = await import('./rasterize.js');
  return rasterize(picture);
}

/** What was measured, and how to draw it. */
interface Checked {
  readonly report: CheckReport;
  readonly picture: () => Promise<string>;
}

async function ofStitchFile(path: string, bytes: Uint8Array, options: Options): Promise<Checked> {
  refuseSeamMarks(options);
  const { limitsAsked } = await import('../density-limits.js');
  const limits = limitsAsked(densityByOptions(undefined, options));
  const { readDst } = await import('../formats/dst-read.js');
  const { examineRecords } = await import('../check/examine.js');
  const { smallestHoop } = await import('../check/hoops.js');
  const { accountOfRecords } = await import('../design/account.js');
  const { checkReport } = await import('../report/check-report.js');
  const { crewOfTwo } = await import('./density-crew.js');
  const { records } = readDst(bytes, basename(path));
  const { widthMm, heightMm } = accountOfRecords(records).totals;
  const hoop = smallestHoop({ width: widthMm, height: heightMm });
  const examined = examineRecords(records, limits, crewOfTwo);
  const picture = async () => {
    const { fileOverlays } = await import('./overlay-pictures.js');
    return fileOverlays(baseName(path), examined.stitches, options, USUAL, limits);
  };
  return { report: checkReport(examined, hoop, []), picture };
}

async function ofDressing(path: string, options: Options, progress: Progress): Promise<Checked> {
  const { library, fabric } = options;
  const { readWork } = await import('./dress-from-file.js');
  const { inSaved } = await import('./dress-work.js');
  const { examineDressed } = await import('../examine-dressed.js');
  const { dress } = await import('../dress.js');
  const { hoopFor } = await import('../check/hoops.js');
  const { checkReport } = await import('../report/check-report.js');
  const { threadLook } = await import('../thread-look.js');
  const { loadDifference } = await import('../color/difference.js');
  const { crewOfTwo } = await import('./density-crew.js');
  const { work, dictionary } = await readWork(path, { library, fabric });
  const density = densityByOptions(work.dressing.density, options);
  const dressing = density ? { ...work.dressing, density } : work.dressing;
  const dressed = await inSaved(work.saved, () => dress(work.block, dressing, dictionary, progress));
  progress(0, 0, 'measuring');
  const look = threadLook(dressed, await loadDifference());
  const hoop = hoopFor(work.dressing.hoop, dressed.field);
  const picture = async () => {
    const { dressedOverlays } = await import('./overlay-pictures.js');
    return dressedOverlays(dressed, options, USUAL);
  };
  return { report: checkReport(examineDressed(dressed, crewOfTwo), hoop, dressed.findings, look), picture };
}
