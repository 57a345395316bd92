import type { Chain } from '../fit/fit.js';
import { ofOneThread, threadsByClass } from '../fit/one-thread.js';
import { ornamentChain } from '../fit/place-ornament.js';
import { sizedOrnament } from '../fit/sized-ornament.js';
import type { Dressing, PlacedOrnament, ThreadChoice } from '../formats/dressing.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { ornamentNamed } from './lines.js';
import { Slips, within } from './slips.js';
import { threadOf, withThread } from './threads.js';

/** One thread of a free-standing figure: a color stop. */
export interface OrnamentLayer {
  readonly title: string;
  readonly thread: ThreadChoice;
  readonly chain: Chain;
}

/**
 * The ornaments that a dressing places, thread by thread, as they stand on the cloth.
 * @throws InputError when the dictionary has no such ornament, or a size is out of its range
 */
export function placedOrnaments(dressing: Dressing, dictionary: Dictionary): OrnamentLayer[] {
  const slips = new Slips();
  const layers = (dressing.ornaments ?? []).flatMap((placed, k) =>
    slips.caught(() =>
      within(`ornament ${k + 1}`, ['ornaments', k], () => ornamentLayers(dressing, dictionary, placed)),
    ),
  );
  slips.tell();
  return layers;
}

function ornamentLayers(dressing: Dressing, dictionary: Dictionary, placed: PlacedOrnament): OrnamentLayer[] {
  const ornament = ornamentNamed(dictionary, placed.ornament);
  const unit = sizedOrnament(ornament, placed.parameters).build(1);
  const spot = { x: placed.at[0], y: placed.at[1], theta: (-(placed.turn ?? 0) * Math.PI) / 180 };
  const whole = ornamentChain(unit, spot, placed.passes);
  return ornament.threads.map((name, thread) => ({
    title: withThread(ornament.title, name),
    thread: threadOf(dressing, placed, thread),
    chain: ofOneThread(whole, threadsByClass(unit), thread),
  }));
}
