import { basename } from 'node:path';
import { dress } from '../dress.js';
import { InputError } from '../input-error.js';
import { readWork } from './dress-from-file.js';
import { inSaved } from './dress-work.js';
import { renderDressed } from './dressed-outputs.js';
import { fileKind, readInput } from './input-file.js';
import { checkOutputs, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { settleStatus } from './print.js';
import { readStashFile } from './stash-file.js';
import type { Terminal } from './terminal.js';
import type { ThreadsOptions } from './threads-command.js';

/** Chooses threads of a stash for a saved dressing, prints them and writes the dressing that --save names. */
export async function chooseThreads(
  path: string,
  options: ThreadsOptions,
  terminal: Terminal,
): Promise<void> {
  const { progress } = terminal;
  progress(0, 0, 'reading');
  const { stash: stashPath, save, palette, changes, library, fabric } = options;
  if (stashPath === undefined) {
    throw new InputError('no-stash', '--stash', 'is not given', 'name a .csv file of your threads');
  }
  if (save !== undefined) outputKind(save, ['.dressing.json'], '--save');
  const outputs = save === undefined ? [] : [{ path: save, said: `--save ${save}` }];
  checkOutputs(outputs, [path, stashPath]);
  if (fileKind(path, await readInput(path)) !== 'record') {
    throw new InputError('no-dressing', path, 'is no saved dressing', 'dress the block with --save first');
  }
  const stash = await readStashFile(stashPath);
  const { work, dictionary, libraryPath } = await readWork(path, { library, fabric });
  checkOutputs(outputs, [path, stashPath, ...(work.file ? [work.file.path] : [])]);
  const [{ threadsFromStash }, { loadDifference }, { threadLook }, { threadsReport, threadsText }] =
    await Promise.all([
      import('../stash-threads.js'),
      import('../color/difference.js'),
      import('../thread-look.js'),
      import('../report/threads-report.js'),
    ]);
  const { dressReport } = await import('../report/dress-report.js');
  const difference = await loadDifference();
  const before = await inSaved(work.saved, () => dress(work.block, work.dressing, dictionary, progress));
  progress(0, 0, 'choosing threads');
  const choice = threadsFromStash(before, stash, { palette, changes }, difference);
  const dressed = await inSaved(work.saved, () => dress(work.block, choice.dressing, dictionary, progress));
  const names = outputs.map((output) => output.path);
  // with seams missing, or others than before, threads are chosen for other work than the maker thinks
  const ofBlock = dressed.findings.filter(({ level, code }) => level === 'error' || code === 'block-changed');
  const said = [...ofBlock, ...threadLook(dressed, difference).findings];
  const report = threadsReport(choice, said, names);
  const places = { block: work.file, library: libraryPath };
  const files = await Promise.all(
    outputs.map((output) =>
      renderDressed(dressed, dressReport(dressed, names), { ...output, ending: '.dressing.json' }, places),
    ),
  );
  progress(0, 0, 'writing');
  await writeOutputs(files, () =>
    options.json
      ? terminal.printJson(report)
      : terminal.print(threadsText(basename(path), report, terminal.paint)),
  );
  settleStatus(report.findings);
}
