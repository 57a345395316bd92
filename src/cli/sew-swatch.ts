import type { Block } from '../block/block.js';
import { ornamentSample, patchBlock, sampleBlock } from '../draw/swatch.js';
import { dress } from '../dress.js';
import type { Dressing } from '../formats/dressing.js';
import { SNAP } from '../geometry/tolerances.js';
import { InputError } from '../input-error.js';
import { defaultDressing } from '../plan.js';
import { dressReport } from '../report/dress-report.js';
import { dressText } from '../report/dress-text.js';
import { askedFor } from './asked-for.js';
import { loadDictionary } from './dictionary.js';
import { renderDressed } from './dressed-outputs.js';
import { checkOutputs, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { sayUnread, settleStatus } from './print.js';
import type { SwatchOptions } from './swatch-command.js';
import type { Terminal } from './terminal.js';

/** Dresses the sample seams in one stitch, writes the picture or stitch file asked for and prints the report. */
export async function sewSwatch(name: string, options: SwatchOptions, terminal: Terminal): Promise<void> {
  const outputs = (options.out === undefined ? [] : [options.out]).map((path) => ({
    path,
    ending: outputKind(path, ['.svg', '.png', '.dst', '.json', '.txt']),
  }));
  const names = outputs.map(({ path }) => path);
  checkOutputs(outputs, []);
  const dictionary = await loadDictionary(options.library);
  const { stitches, ornaments, treatments } = await askedFor(dictionary, name);
  sayUnread(dictionary.unread);
  const [stitch] = stitches.values();
  const [ornament] = ornaments.values();
  const [treatment] = treatments.values();
  const sample = stitch ?? ornament ?? treatment;
  if (!stitch && (options.repeat !== undefined || options.width !== undefined)) {
    const option = options.repeat === undefined ? '--width' : '--repeat';
    const kind = ornament ? 'an ornament' : 'a saved treatment';
    throw new InputError(
      'size-of-stitch',
      option,
      `${sample.title} is ${kind}`,
      'only a stitch takes it here',
    );
  }

  const source = { file: `${sample.name}.svg`, stops: null, snap: SNAP, through: [] };
  // A patch without seams is what an ornament is tried on, and nothing to mind.
  const block: Block = ornament
    ? { ...(await patchBlock(sample.name, source)), findings: [] }
    : await sampleBlock(sample.name, source);
  const dressing: Dressing = ornament
    ? ornamentSample(source, ornament)
    : defaultDressing(block.map, {
        source,
        dictionary,
        stitch: stitch?.name,
        treatment,
        repeat: options.repeat,
        width: options.width,
      });
  const dressed = dress(block, dressing, dictionary, terminal.progress);
  const report = dressReport(dressed, names);
  const on = ornament ? 'upright, turned, small and large' : 'on a straight seam, a curve and a corner';
  terminal.progress(0, 0, 'drawing');
  const files = await Promise.all(
    outputs.map((output) => renderDressed(dressed, report, output, { block: null, library: null })),
  );
  await writeOutputs(files, () =>
    options.json
      ? terminal.printJson(report)
      : terminal.print(`${sample.title} ${on}\n\n${dressText(report, terminal.paint)}`),
  );
  settleStatus(report.findings);
}
