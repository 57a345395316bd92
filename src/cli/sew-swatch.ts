import { sampleBlock } from '../draw/swatch.js';
import { dress } from '../dress.js';
import { SNAP } from '../geometry/tolerances.js';
import { defaultDressing } from '../plan.js';
import { dressReport } from '../report/dress-report.js';
import { dressText } from '../report/dress-text.js';
import { findStitch } from '../stitches/library.js';
import { renderDressed } from './dressed-outputs.js';
import { loadLibrary } from './library.js';
import { checkOutputs, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { print, printJson, settleStatus } from './print.js';
import type { SwatchOptions } from './swatch-command.js';

/** Dresses the sample seams in one stitch, writes the picture or stitch file asked for and prints the report. */
export async function sewSwatch(name: string, options: SwatchOptions): Promise<void> {
  const outputs = (options.out === undefined ? [] : [options.out]).map((path) => ({
    path,
    ending: outputKind(path, ['.svg', '.png', '.dst', '.json', '.txt']),
  }));
  const names = outputs.map(({ path }) => path);
  checkOutputs(names, []);
  const library = loadLibrary();
  const stitch = findStitch([...library.values()], name);

  const source = { file: `${stitch.name}.svg`, stops: null, snap: SNAP, through: [] };
  const block = await sampleBlock(stitch.name, source);
  const dressing = defaultDressing(block.map, {
    source,
    library,
    stitch: stitch.name,
    repeat: options.repeat,
    width: options.width,
  });
  const dressed = dress(block, dressing, library);
  const report = dressReport(dressed, names);
  writeOutputs(
    await Promise.all(outputs.map((output) => renderDressed(dressed, report, output, source.file))),
  );
  if (options.json) printJson(report);
  else print(`${stitch.title} on a straight seam, a curve and a corner\n\n${dressText(report)}`);
  settleStatus(report.findings);
}
