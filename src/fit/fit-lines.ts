import type { SeamMap } from '../block/seam-map.js';
import type { Progress } from '../progress.js';
import type { FitRules, LineAsk } from './ask.js';
import { cutter } from './cloth.js';
import { leaveOutUnderThrough } from './leave-out.js';
import { fitLine, type LineFit, type Rest, withoutEmpty, withPlainParts } from './line-fit.js';
import { partsOf, piecesOf, throughLines } from './line-pieces.js';
import { waysOf } from './lines.js';
import { either, Memory, withLinked } from './memory.js';
import { linesAt, meetingLines, narrowedLines } from './narrowing.js';
import { bareAtJunctions } from './plain-at-junctions.js';
import { isWhole, plainParts } from './plain-parts.js';
import { isSame } from './same.js';
import { spansApart } from './spans-apart.js';

/**
 * Fits every line that is asked for: bands first, then ends at junctions, then repeats. One ask a line, in any order;
 * answers come in the order of the asks. Cost: linear in the lines and their repeats; with a memory, what has changed
 * and what depends on it.
 *
 * @param memory of an earlier fit: where map, rules and seams are the same, asks that are the same objects are not worked
 *   out again. The answer is the same as without
 * @param progress told line by line
 */
export function fitLines(
  map: SeamMap,
  asks: readonly LineAsk[],
  rules: FitRules,
  memory: Memory = new Memory(),
  progress: Progress = () => {},
): LineFit[] {
  progress(0, asks.length, 'fitting seams');
  const count = asks.length;
  const seams = asks.map(({ seam }) => seam);
  memory.begin([map, rules.gap, rules.outline, ...seams]);
  const changed = memory.each('ask', count, 'all', (l) => asks[l]).changed;
  const meet = memory.once('meeting', () => meetingLines(map, seams));
  const cut = memory.once('cutter', () => cutter(map));
  const ways = waysOf(map, asks, rules.gap, changed, memory);
  const lines = narrowedLines(map, ways, meet, rules, memory);
  const spans = spansApart(map, lines, meet, rules, cut, memory);
  const pieces = memory.each('pieces', count, either(lines.changed, spans.changed), (l) => {
    progress(l, count, 'fitting seams');
    return piecesOf(map, lines.of[l], spans.of[l], rules, cut);
  });
  const all = linesAt(meet.places, lines.of);
  // what is left for a plain line depends on all that it meets, and over whom it is sewn on whether they are dressed
  const rest = memory.each(
    'rest',
    count,
    either(pieces.changed, withLinked(lines.changed, meet.met)),
    (l, last: Rest | undefined): Rest => {
      const line = lines.of[l];
      const parts = partsOf(pieces.of[l]);
      const plain = isWhole(line, parts) ? [] : plainParts(map, all, line, rules, parts);
      const found = { plain, tucksUnder: throughLines(map, all, line, spans.of[l]) };
      return last && isSame(found, last) ? last : found;
    },
  );
  const fits = memory.each('fit', count, either(pieces.changed, rest.changed), (l) => {
    return fitLine(lines.of[l], pieces.of[l], rest.of[l]);
  });
  const left = leaveOutUnderThrough(fits, map.junctions, meet, memory);
  const ends = memory.each(
    'ends',
    count,
    withLinked(either(left.changed, lines.changed, spans.changed), meet.met),
    (l, last: LineFit | undefined): LineFit => {
      const met = () =>
        meet.met[l].flatMap((other) => left.of[other].fit.layers.flatMap((one) => one.chains));
      const sewn = { line: lines.of[l], spans: spans.of[l], fit: left.of[l].fit, whole: fits.of[l].fit };
      const bare = bareAtJunctions(map, all, sewn, rules, met);
      const found = bare.length === 0 ? left.of[l] : withPlainParts(lines.of[l], left.of[l], bare);
      return last && bare.length > 0 && isSame(found, last) ? last : found;
    },
  );
  return memory.each('worked', count, ends.changed, (l) => withoutEmpty(ends.of[l])).of.slice();
}
