import { passesIn } from '../../asked/heaviness.js';
import { accentNames } from '../../asked/layers.js';
import type { Threaded } from '../../asked/threads.js';
import type { Dressed, DressedLine, DressedOrnament } from '../../dress.js';
import {
  type Dressing,
  HAND_THREADS,
  type HandThread,
  type ThreadChoice,
  type Weighted,
} from '../../formats/dressing.js';
import { craftFor } from '../../needle/craft.js';
import { handThreadTitle, handThreadWidth } from '../../needle/heaviness.js';
import { counted } from '../../report/table.js';
import type { Dictionary } from '../../stitches/dictionary.js';
import type { Entry } from './pattern.js';

/** What a line of the block is called on a pattern. */
export const placeName = (line: number | 'outline'): string => (line === 'outline' ? 'edge' : String(line));

/** What there is to work, in the order in which it is: what lies under other thread comes first. */
export function entriesOf(
  { dressing }: Dressed,
  lines: readonly DressedLine[],
  ornaments: readonly DressedOrnament[],
  dictionary: Dictionary,
): Entry[] {
  return [
    ...lines.flatMap((line) => ofLine(dressing, dictionary, line)),
    ...ornaments.map(({ ornament, title, thread }): Entry => {
      const placed = dressing.ornaments![ornament];
      return { place: '', what: title, thread: threadTold(dressing, [thread], placed) };
    }),
  ];
}

function ofLine(
  dressing: Dressing,
  dictionary: Dictionary,
  { fit, layers, treatment }: DressedLine,
): Entry[] {
  const asked = dressing.treatments[treatment];
  const { rows, accents = [], laid } = asked;
  const place = placeName(fit.seam);
  const threadsOf = (kind: 'row' | 'accent', index: number): ThreadChoice[] =>
    fit.layers.flatMap((layer, i) =>
      layer.kind === kind && layer.index === index ? [layers[i].thread] : [],
    );
  const names = accentNames(asked, dictionary);
  const entries: Entry[] = [];
  if (laid && fit.layers.some(({ kind }) => kind === 'placement'))
    entries.push({
      place,
      what: `${capital(laid.name)}, ${laid.width} mm wide, laid along the line`,
      thread: '',
    });
  rows.forEach((row, r) => {
    const { title } = dictionary.stitches.get(row.stitch)!;
    const count = fit.rows[r];
    const repeats = count?.repeats
      ? `, ${counted(count.repeats, 'repeat')} of ${(count.along / count.repeats).toFixed(1)} mm`
      : '';
    const thread = threadTold(dressing, threadsOf('row', r), row);
    entries.push({ place, what: `${title}${repeats}`, thread });
  });
  accents.forEach((accent, k) => {
    const { row, byHand } = accent;
    const sewn = fit.accents[k];
    const done = sewn ? sewn.asked - sewn.leftOut.length : 0;
    if (done === 0) return;
    const on = dictionary.stitches.get(rows[row].stitch)!.title.toLowerCase();
    const what = `${capital(names[k])} on ${on}, ${done === 1 ? 'one' : `${done} of them`}`;
    entries.push({
      place,
      what,
      thread: byHand ? 'put on by hand' : threadTold(dressing, threadsOf('accent', k), accent),
    });
  });
  return entries;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function threadTold(dressing: Dressing, threads: readonly ThreadChoice[], work: Weighted & Threaded): string {
  if (threads.length === 0) return '';
  const names = [...new Set(threads.map(({ name, hex }) => name || hex))].join(' and ');
  const hand = work.heavy ?? likeByHand(threads[0].weight, passesIn(dressing, work));
  return `${names}, about as heavy as ${handThreadTitle(hand)}`;
}

/** The thread of a hand that lies about as wide as so many passes of a machine's side by side. */
export function likeByHand(weight: string, passes: number): HandThread {
  const { threadWidth, spread } = craftFor(weight);
  const away = (hand: HandThread) => Math.abs(handThreadWidth(hand) - threadWidth - (passes - 1) * spread);
  return HAND_THREADS.reduce((best, one) => (away(one) < away(best) ? one : best));
}
