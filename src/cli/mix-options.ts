import type { SeamMap } from '../block/seam-map.js';
import type { Dressing } from '../formats/dressing.js';
import type { Mixed } from '../harmony/mix.js';
import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import type { DressOptions } from './dress-command.js';

/** What mixing chooses by itself. */
const chosenByMix = ['stitch', 'treatment', 'repeat', 'width', 'guide'] as const;
/** What says nothing unless a block is mixed. */
const ofMix = ['threads', 'pin'] as const;

/** @throws InputError when options stand together that contradict each other, or one stands without what it belongs to */
export function checkMixOptions(options: DressOptions): void {
  if (!options.mix) {
    const alone = ofMix.find((name) => options[name] !== undefined);
    if (alone === undefined) return;
    throw new InputError('without-mix', `--${alone}`, 'stands without --mix', 'add --mix, or leave it away');
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

/**
 * The block mixed from the library: one thread when nobody says how many, or those of a saved dressing.
 * @param saved whether the dressing was saved before; else options made it
 */
export async function mixed(
  map: SeamMap,
  dressing: Dressing,
  saved: boolean,
  { seed, threads, thread, pin, seam }: DressOptions,
  dictionary: Dictionary,
): Promise<Mixed> {
  const { mixDressing } = await import('../harmony/mix.js');
  return mixDressing(map, dressing, dictionary, {
    seed: seed ?? dressing.seed,
    threads: threads ?? (saved ? undefined : 1),
    first: thread === undefined ? undefined : dressing.threads[0],
    pins: pin,
    seams: seam,
  });
}
