import type { SeamMap } from '../block/seam-map.js';
import { boxOf } from '../geometry/box.js';
import type { FitRules, LineAsk } from './ask.js';
import { claimedCloth } from './band-polygon.js';
import type { Bound, Cut } from './cloth.js';
import { endRules, type Line, type Lines } from './lines.js';
import type { Memory } from './memory.js';
import { type Claimant, movedApart } from './moved-apart.js';
import { type Meeting, withMeeting } from './narrowing.js';
import { sameSpans } from './same-spans.js';
import { type Span, spansOf } from './spans.js';

/**
 * The spans of all lines, in the order of the asks; those that stop short of others moved clear of what these claim.
 *
 * @param memory what is known of the same map under the same rules
 */
export function spansApart(
  map: SeamMap,
  lines: Lines,
  meet: Meeting,
  asks: readonly LineAsk[],
  rules: FitRules,
  cut: (bound: Bound) => Cut,
  memory: Memory,
): (readonly Span[])[] {
  const all = asks.map(({ seam }, l) => {
    const line = lines.get(seam)!;
    const spans = memory.of('spans', l, withMeeting(line, lines, meet), () => {
      const last = memory.of('last spans', l, [line], (): { spans: readonly Span[] } => ({ spans: [] }));
      const found = spansOf(line.walk, endRules(map, lines, line, rules));
      // A neighbor may change without a change at these ends: then all that follows from them stands.
      if (!sameSpans(found, last.spans)) last.spans = found;
      return last.spans;
    });
    return { line, spans };
  });
  if (asks.every(({ manner }) => manner === 'tuck')) return all.map(({ spans }) => spans);
  const runsThrough = memory.of('through', 0, [map], () => throughOf(map));
  const claimants = all.map(({ line, spans }, l): Claimant => {
    const claim = (span: Span) =>
      claimedCloth({ guide: line.walk.guide, band: line.band, span, worked: null }, cut);
    const claims = memory.of('claims', l, [line, spans], () =>
      spans.flatMap((span) => claim(span).map((points) => ({ points, box: boxOf([points]) }))),
    );
    return { line, spans, claims, claim, yieldsTo: (o) => yieldsTo(line, all[o].line, o < l) };
  });
  return movedApart(claimants, rules.gap, memory);

  function yieldsTo(one: Line, other: Line, isEarlier: boolean): boolean {
    if (one.ask.manner !== 'short') return false;
    if (other.ask.manner !== 'short') return true;
    const runs = runsThrough(one.walk.seam, other.walk.seam);
    if (runs !== null) return runs !== one.walk.seam;
    // where neither runs through the other's end, the longer one keeps its own
    const longer = other.walk.guide.length - one.walk.guide.length;
    return Math.abs(longer) > 1e-6 ? longer > 0 : isEarlier;
  }
}

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
