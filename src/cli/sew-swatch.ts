import { sampleBlock } from '../draw/swatch.js';
import { dress } from '../dress.js';
import { SNAP } from '../geometry/tolerances.js';
import { defaultDressing } from '../plan.js';
import { dressReport } from '../report/dress-report.js';
import { findStitch } from '../stitches/library.js';
import { renderDressed } from './dressed-outputs.js';
import { loadLibrary } from './library.js';
import { checkOutputs, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { print, printJson, settleStatus } from './print.js';
import type { SwatchOptions } from './swatch-command.js';

/** Dresses the sample seams in one stitch and writes the picture or stitch file. */
export async function sewSwatch(name: string, options: SwatchOptions): Promise<void> {
  const library = loadLibrary();
  const stitch = findStitch([...library.values()], name);
  const out = options.out ?? `${stitch.name}.svg`;
  const output = { path: out, ending: outputKind(out, ['.svg', '.png', '.dst', '.json']) };
  checkOutputs([out], []);

  const source = { file: '', stops: null, snap: SNAP, through: [] };
  const block = await sampleBlock(name, source);
  const dressing = defaultDressing(block.map, {
    source,
    library,
    stitch: stitch.name,
    repeat: options.repeat,
    width: options.width,
  });
  const dressed = dress(block, dressing, library);
  const report = dressReport(dressed, [out]);
  writeOutputs([await renderDressed(dressed, report, output, '')]);
  if (options.json) printJson(report);
  else {
    const size = `${report.totals.widthMm} x ${report.totals.heightMm} mm`;
    print(`${stitch.title} on sample seams, ${size}, ${report.totals.stitches} stitches. Made ${out}`);
  }
  settleStatus(report.findings);
}
