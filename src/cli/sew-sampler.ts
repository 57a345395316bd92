import { InputError } from '../input-error.js';
import { dressReport } from '../report/dress-report.js';
import { samplerText } from '../report/sampler-text.js';
import { samplerOf } from '../sampler.js';
import { readWork } from './dress-from-file.js';
import { inSaved } from './dress-work.js';
import { renderDressed } from './dressed-outputs.js';
import { fileKind, readInput } from './input-file.js';
import { checkOutputs, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { settleStatus } from './print.js';
import type { SamplerOptions } from './sampler-command.js';
import { checkSheetOptions } from './sheet-options.js';
import type { Terminal } from './terminal.js';

/** Sews the sampler of a dressing, writes the outputs asked for and prints what each number is. */
export async function sewSampler(
  path: string,
  { out = [], library, from, json, ...sheet }: SamplerOptions,
  terminal: Terminal,
): Promise<void> {
  const outputs = out.map((name) => ({
    path: name,
    ending: outputKind(name, ['.dst', '.svg', '.png', '.json', '.csv', '.txt', '.pdf']),
  }));
  checkOutputs(outputs, [path]);
  checkSheetOptions(
    sheet,
    outputs.map(({ ending }) => ending),
  );
  if (fileKind(path, await readInput(path)) !== 'record') {
    throw new InputError(
      'not-a-dressing',
      path,
      'is no dressing',
      'dress the block first, with --save NAME.dressing.json, and give that',
    );
  }
  terminal.progress(0, 0, 'reading');
  const { work, dictionary } = await readWork(path, { library });
  if (work.dressing.treatments.length === 0) {
    throw new InputError('nothing-to-sew', path, 'has no treatments', 'dress at least one seam of its block');
  }
  const { dressed, samples, last } = await inSaved(work.saved, () =>
    samplerOf(work.dressing, dictionary, from),
  );
  if (samples.length === 0) {
    throw new InputError(
      'bad-number',
      `--from ${from}`,
      'is beyond the last of its treatments',
      `it has ${last}, those alike counted once`,
    );
  }
  terminal.progress(0, 0, 'drawing');
  const report = dressReport(dressed, out);
  const numbers = new Map(samples.map(({ line, number }) => [line, number]));
  const files = await Promise.all(
    outputs.map((output) =>
      output.ending === '.txt'
        ? { ...output, content: `${samplerText(samples, report)}\n` }
        : renderDressed(dressed, report, output, { block: null, library: null }, { ...sheet, numbers }),
    ),
  );
  terminal.progress(0, 0, 'writing');
  await writeOutputs(files, () =>
    json
      ? terminal.printJson({ ...report, samples })
      : terminal.print(samplerText(samples, report, terminal.paint)),
  );
  settleStatus(report.findings);
}
