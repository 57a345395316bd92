import { dirname, resolve } from 'node:path';
import { aloneDesign } from '../design/alone.js';
import { type Dressed, dress } from '../dress.js';
import type { Dressing } from '../formats/dressing.js';
import { InputError } from '../input-error.js';
import type { Progress } from '../progress.js';
import type { DressReport } from '../report/dress-report.js';
import type { Setting } from '../settings.js';
import { askedOn, refuseBrokenWork } from './asked-for.js';
import { type LoadedDictionary, loadDictionary } from './dictionary.js';
import type { DressOptions } from './dress-command.js';
import { type DressWork, inSaved, type SavedDressing } from './dress-work.js';
import { dressedEndings, type Places, renderDressed } from './dressed-outputs.js';
import { withHooping } from './hooping-options.js';
import { fileKind, readInput } from './input-file.js';
import { checkLimits, densityByOptions } from './limits-option.js';
import { checkMixOptions, mixed, settingsAround, whyWithSettings } from './mix-options.js';
import { checkOutputs, type Named, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { checkPictureOptions } from './picture-options.js';
import { checkPlaceOptions, placedByOptions } from './place-options.js';
import { sayUnread, settleStatus } from './print.js';
import { blockFile } from './read-block.js';
import { checkSheetOptions } from './sheet-options.js';
import type { Terminal } from './terminal.js';
import { threadColor } from './thread-color.js';
import { readSaved, workFromDressing } from './work-from-dressing.js';
import { refuseForDrawing, workFromOptions } from './work-from-options.js';

/** Runs the main job on a block or a saved dressing, writes the outputs asked for and prints the report. */
export async function dressFromFile(path: string, options: DressOptions, terminal: Terminal): Promise<void> {
  const outputs = outputsAsked(options);
  const endings = outputs.map(({ ending }) => ending);
  checkPictureOptions(options, endings);
  checkLimits(options, endings);
  checkSheetOptions(options, endings);
  const { work, dressed, report, places } = await dressAsAsked(path, options, outputs, terminal.progress);
  terminal.progress(0, 0, 'drawing');
  const files = await inSaved(work.saved, () =>
    Promise.all(outputs.map((output) => renderDressed(dressed, report, output, places, options))),
  );
  terminal.progress(0, 0, 'writing');
  await writeOutputs(files, async () =>
    options.json
      ? terminal.printJson(report)
      : terminal.print((await import('../report/dress-text.js')).dressText(report, terminal.paint)),
  );
  settleStatus(report.findings);
}

/** What a block or a saved dressing becomes as the options have it. */
export interface AsAsked {
  readonly work: DressWork;
  readonly dressed: Dressed;
  readonly report: DressReport;
  readonly places: Places;
  readonly dictionary: LoadedDictionary;
}

/**
 * Dresses a block or a saved dressing as the options have it.
 * @param outputs what is to be written of it afterwards: looked at first, so that nothing is worked in vain
 */
export async function dressAsAsked(
  path: string,
  options: DressOptions,
  outputs: readonly Named[],
  progress: Progress,
): Promise<AsAsked> {
  const names = outputs.map((output) => output.path);
  checkOutputs(outputs, [path]);
  checkTogether(options);
  progress(0, 0, 'reading');
  const { work, dictionary, libraryPath } = await readWork(path, options);
  checkOutputs(outputs, [path, ...(work.file ? [work.file.path] : [])]);
  if (options.leaveOut) refuseForDrawing(work.block, { path: work.file?.path ?? path }, '--leave-out');
  if (options.alone) refuseForDrawing(work.block, { path: work.file?.path ?? path }, '--alone');

  const { map } = work.block;
  const { isOfWeight, withBare, withSettings } = await import('../settings.js');
  const density = densityByOptions(work.dressing.density, options);
  const measured = density ? { ...work.dressing, density } : work.dressing;
  const placed = withHooping(placedByOptions(measured, options), options, map);
  const { withHeavyRows } = await import('../asked/heaviness.js');
  const weighed = (dressing: Dressing): Dressing =>
    options.heavy ? withHeavyRows(dressing, options.heavy) : dressing;
  const base = weighed(withBare(placed, options.bare ?? [], map));
  const settings = await settingsAsked(options.set ?? [], dictionary);
  const { before, pins, after } = settingsAround(options.mix ? settings : []);
  const mix = options.mix
    ? await inSaved(work.saved, () => {
        const set = withSettings(base, before, map, dictionary);
        const pin = [...(options.pin ?? []), ...pins];
        return mixed(work.block, set, work.saved !== null, { ...options, pin }, dictionary);
      })
    : undefined;
  const dressing = mix
    ? withSettings(weighed(mix.dressing), [...before.filter(isOfWeight), ...after], map, dictionary)
    : withSettings(base, settings, map, dictionary);
  const whole = await inSaved(work.saved, () => dress(work.block, dressing, dictionary, progress));
  const dressed = options.alone ? { ...whole, design: aloneDesign(whole.design) } : whole;
  const { dressReport } = await import('../report/dress-report.js');
  const report = dressReport(dressed, names, mix && { ...mix, why: whyWithSettings(mix.why, after) });
  const places = { block: work.file, library: libraryPath };
  return { work, dressed, report, places, dictionary };
}

/** What `--out` names by its ending, and the dressing that `--save` names. */
function outputsAsked({ out = [], save, embed }: DressOptions) {
  if (save !== undefined) outputKind(save, ['.dressing.json'], '--save');
  const outputs = [
    ...out.map((path) => ({ path, said: `--out ${path}` })),
    ...(save === undefined ? [] : [{ path: save, said: `--save ${save}` }]),
  ].map(({ path, said }) => ({ path, said, ending: outputKind(path, dressedEndings) }));
  if (!embed || outputs.some(({ ending }) => ending === '.dressing.json')) return outputs;
  throw new InputError('nothing-to-embed-in', '--embed', 'no dressing is saved', 'name one with --save');
}

/** @throws InputError when options contradict each other */
function checkTogether(options: DressOptions): void {
  if (options.stitch !== undefined && options.treatment !== undefined) {
    throw new InputError(
      'two-asks',
      '--treatment',
      'stands beside --stitch',
      'name a stitch or a treatment, not both',
    );
  }
  checkMixOptions(options);
  checkPlaceOptions(options);
}

export interface ReadWork {
  readonly work: DressWork;
  readonly dictionary: LoadedDictionary;
  /** of a library that was named; null for the usual one */
  readonly libraryPath: string | null;
}

/** A block or a saved dressing as the options have it, and the dictionary it is worked from. */
export async function readWork(path: string, options: DressOptions): Promise<ReadWork> {
  const bytes = await readInput(path);
  const saved = fileKind(path, bytes) === 'record' ? await readSaved(path, bytes) : null;
  const library = options.library ?? libraryOf(saved);
  const dictionary = await loadDictionary(library);
  const asked = async (shelf: 'stitches' | 'treatments', name: string | undefined) =>
    name && (await askedOn(dictionary, shelf, name)).name;
  const chosen = {
    ...options,
    stitch: await asked('stitches', options.stitch),
    edge: await asked('stitches', options.edge),
    treatment: await asked('treatments', options.treatment),
  };
  if (saved) await refuseBrokenWork(dictionary, saved.dressing);
  sayUnread(dictionary.unread);
  const work = saved
    ? await workFromDressing(saved, options)
    : await workFromOptions(blockFile(path, bytes), chosen, dictionary);
  const { dressing } = work;
  return {
    work: library === undefined ? work : { ...work, dressing: { ...dressing, library } },
    dictionary,
    libraryPath: library ?? null,
  };
}

/** The library that a dressing names, seen from where it lies. */
const libraryOf = (saved: SavedDressing | null): Dressing['library'] =>
  saved?.dressing.library === undefined ? undefined : resolve(dirname(saved.path), saved.dressing.library);

/** Settings with names and colors as the dressing has them. */
async function settingsAsked(
  settings: readonly Setting[],
  dictionary: LoadedDictionary,
): Promise<readonly Setting[]> {
  const { settingAsSaid } = await import('../settings.js');
  const settle = async (setting: Setting): Promise<Setting> => {
    const { what, value } = setting;
    if (what === 'thread') return { ...setting, value: await threadColor(value, settingAsSaid(setting)) };
    if (what === 'stitch') return { ...setting, value: (await askedOn(dictionary, 'stitches', value)).name };
    return setting;
  };
  return Promise.all(settings.map(settle));
}
