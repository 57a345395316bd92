import type { Layer } from '../fit/fit.js';
import type { Dressing, ThreadChoice, Treatment } from '../formats/dressing.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { spreadIn } from './heaviness.js';
import { threadOf, withThread } from './threads.js';

/** What one thread of a treatment is called, which thread it is, and how far apart its passes lie where not as usual. */
export function askedLayer(
  dressing: Dressing,
  dictionary: Dictionary,
  treatment: number,
  { kind, index, thread }: Pick<Layer, 'kind' | 'index' | 'thread'>,
): { title: string; thread: ThreadChoice; spread?: number } {
  const { rows, accents = [], laid } = dressing.treatments[treatment];
  if (kind === 'placement') {
    return { title: `Placement line for ${laid!.name}`, thread: dressing.threads[laid!.thread] };
  }
  if (kind === 'row') {
    const stitch = dictionary.stitches.get(rows[index].stitch)!;
    return {
      title: withThread(stitch.title, stitch.threads[thread]),
      thread: threadOf(dressing, rows[index], thread),
      spread: spreadIn(dressing, rows[index], thread),
    };
  }
  const accent = accents[index];
  const ornament = dictionary.ornaments.get(accent.ornament!)!;
  const on = dictionary.stitches.get(rows[accent.row].stitch)!.title.toLowerCase();
  return {
    title: `${withThread(ornament.title, ornament.threads[thread])} on ${on}`,
    thread: threadOf(dressing, accent, thread),
    spread: spreadIn(dressing, accent, thread),
  };
}

/** What each accent of a treatment is called in a sentence: 'french knot', or 'bead' where it is put on by hand. */
export const accentNames = ({ accents = [] }: Treatment, { ornaments }: Dictionary): string[] =>
  accents.map(({ ornament, byHand }) =>
    ornament === null ? byHand! : ornaments.get(ornament)!.title.toLowerCase(),
  );
