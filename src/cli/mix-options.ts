import type { Block } from '../block/block.js';
import type { Dressing } from '../formats/dressing.js';
import type { Mixed } from '../harmony/mix.js';
import { InputError } from '../input-error.js';
import type { Setting } from '../settings.js';
import type { Dictionary } from '../stitches/dictionary.js';
import type { DressOptions } from './dress-command.js';
import type { PinOption } from './pins-option.js';
import { readStashFile } from './stash-file.js';

/** What mixing chooses by itself. */
const chosenByMix = ['stitch', 'treatment', 'repeat', 'width', 'guide'] as const;
/** What says nothing unless a block is mixed. */
const ofMix = ['threads', 'pin', 'stash'] as const;

/** @throws InputError when options stand together that contradict each other, or one stands without what it belongs to */
export function checkMixOptions(options: DressOptions): void {
  if (!options.mix) {
    const alone = ofMix.find((name) => options[name] !== undefined);
    if (alone === undefined) return;
    throw new InputError('without-mix', `--${alone}`, 'stands without --mix', 'add --mix, or leave it away');
  }
  const dressed = [...(options.pin ?? []), ...settingsAround(options.set ?? []).pins];
  const both = dressed.find(({ seam }) => options.bare?.includes(seam));
  if (both) {
    throw new InputError(
      'bare-and-dressed',
      `--bare ${both.seam}`,
      `seam ${both.seam} is to have ${both.name} too`,
      'say one or the other',
    );
  }
  const beside = chosenByMix.find((name) => options[name] !== undefined);
  if (beside === undefined) return;
  throw new InputError(
    'two-asks',
    `--${beside}`,
    'stands beside --mix, which chooses this itself',
    beside === 'stitch' || beside === 'treatment'
      ? 'leave one of them away, or pin it to a seam, such as --pin 3=feather'
      : 'leave one of them away',
  );
}

/** What the maker sets of single seams, before a block is mixed and after. */
export interface SettingsAround {
  readonly before: readonly Setting[];
  readonly pins: readonly PinOption[];
  readonly after: readonly Setting[];
}

/** A stitch that is set is pinned, so that nothing that meets it gets the same; the edge is there before all else is mixed. */
export function settingsAround(settings: readonly Setting[]): SettingsAround {
  const pins = new Map<number, string>();
  for (const { line, what, value } of settings)
    if (what === 'stitch' && line !== 'outline') pins.set(line, value);
  return {
    before: settings.filter(({ line }) => line === 'outline'),
    pins: [...pins].map(([seam, name]) => ({ seam, name })),
    after: settings.filter(({ line, what }) => line !== 'outline' && what !== 'stitch'),
  };
}

/** Why each line got what it got, with what the maker has set of it since. */
export function whyWithSettings(why: Mixed['why'], after: readonly Setting[]): Mixed['why'] {
  const told = new Map(why);
  for (const { line, what, value } of after) {
    const reason = told.get(line);
    if (reason !== undefined) told.set(line, `${reason}; then ${what} set to ${value}`);
  }
  return told;
}

/**
 * The block, as drawn, mixed from the library: one thread when nobody says how many, or those of a saved dressing.
 * @param saved whether the dressing was saved before; else options made it
 */
export async function mixed(
  block: Block,
  dressing: Dressing,
  saved: boolean,
  { seed, threads, thread, pin, seam, stash }: DressOptions,
  dictionary: Dictionary,
): Promise<Mixed> {
  const [{ mixDressing }, { placedWork, placementAsked }, places, { keptAreas }] = await Promise.all([
    import('../harmony/mix.js'),
    import('../placed.js'),
    import('../asked/placed-dressing.js'),
    import('../asked/keep-clear.js'),
  ]);
  // what suits a seam goes by how long it is to be; what a dressing keeps are places on the block as drawn
  const { map } = block;
  const placement = placementAsked(map, dressing);
  const asPlaced = placedWork(block, dressing);
  const mix = mixDressing(asPlaced.block.map, places.placedDressing(dressing, placement), dictionary, {
    seed: seed ?? dressing.seed,
    // a dressing that has threads keeps them, unless others are to be chosen from
    threads: threads ?? (saved && !stash ? undefined : 1),
    stash: stash === undefined ? undefined : await readStashFile(stash),
    first: thread === undefined ? undefined : dressing.threads[0],
    pins: pin,
    seams: seam,
    isNew: !saved,
    keepClear: keptAreas(asPlaced.block, asPlaced.dressing),
  });
  return { ...mix, dressing: places.unplacedDressing(mix.dressing, placement) };
}
