import type { SeamMap } from '../block/seam-map.js';
import type { FitRules } from './ask.js';
import { claimedCloth } from './band-polygon.js';
import type { Bound, Cut } from './cloth.js';
import { endRules, type Line, mannerOf } from './lines.js';
import { isEverShort } from './manner.js';
import { type Answers, either, type Memory, withLinked } from './memory.js';
import { type Claimant, movedApart } from './moved-apart.js';
import { linesAt, type Meeting } from './narrowing.js';
import { isSame } from './same.js';
import { type Span, type SpanEnd, spansOf } from './spans.js';

/** The spans of all lines; those that stop short of others moved clear of what these claim. */
export function spansApart(
  map: SeamMap,
  lines: Answers<Line>,
  meet: Meeting,
  rules: FitRules,
  cut: (bound: Bound) => Cut,
  memory: Memory,
): Answers<readonly Span[]> {
  const count = lines.of.length;
  // A line may change without a change to what others see of it: where it lies, and how far it reaches.
  const seen = memory.each('seen', count, lines.changed, (l, last: Seen | undefined): Seen => {
    const { walk, band } = lines.of[l];
    return last && walk === last.walk && isSame(band, last.band) ? last : { walk, band };
  });
  const all = linesAt(meet.places, lines.of);
  const spans = memory.each(
    'spans',
    count,
    either(lines.changed, withLinked(seen.changed, meet.met)),
    (l, last: readonly Span[] | undefined) => {
      const line = lines.of[l];
      const found = spansOf(line.walk, endRules(map, all, line, rules));
      return last && isSame(found, last) ? last : found;
    },
  );
  if (!lines.of.some(({ ask }) => isEverShort(ask.manner))) return spans;
  const runsThrough = memory.once('through', () => throughOf(map));
  const claimants = memory.each('claims', count, either(lines.changed, spans.changed), (l): Claimant => {
    const line = lines.of[l];
    const { walk, band } = line;
    const claim = (span: Span) => claimedCloth({ guide: walk.guide, band, span, worked: null }, cut);
    const gives = ({ at }: SpanEnd) => mannerOf(line, at) === 'short';
    return { spans: spans.of[l], claims: spans.of[l].flatMap(claim), claim, gives };
  });
  return movedApart(claimants, yieldsTo, rules.gap, memory);

  function yieldsTo(l: number, o: number): boolean {
    const [one, other] = [lines.of[l], lines.of[o]];
    if (!isEverShort(one.ask.manner)) return false;
    if (!isEverShort(other.ask.manner)) return true;
    const runs = runsThrough(one.walk.seam, other.walk.seam);
    if (runs !== null) return runs !== one.walk.seam;
    // where neither runs through the other's end, the longer one keeps its own
    const longer = other.walk.guide.length - one.walk.guide.length;
    return Math.abs(longer) > 1e-6 ? longer > 0 : o < l;
  }
}

/** What other lines' ends depend on. */
type Seen = Pick<Line, 'walk' | 'band'>;

/** Answers which of two lines runs through where they meet; null where neither does. */
function throughOf(map: SeamMap) {
  const known = new Map<string, number | 'outline'>();
  for (const { arms, through, onOutline } of map.junctions) {
    const runs = onOutline ? 'outline' : through;
    if (runs === null) continue;
    for (const { seam } of arms) known.set(`${seam}/${runs}`, runs).set(`${runs}/${seam}`, runs);
  }
  return (a: number | 'outline', b: number | 'outline') => known.get(`${a}/${b}`) ?? null;
}
