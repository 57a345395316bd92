import type { Junction, SeamMap } from '../block/seam-map.js';
import type { FitRules, LineAsk } from './ask.js';
import { reachAt } from './band.js';
import { bandedLine, endRules, type Line, type Lines, NARROWING, type Way, waysOf } from './lines.js';
import { Memory } from './memory.js';
import { spansOf } from './spans.js';

/** A setback longer than this many reaches, or than this share of the line, narrows both treatments first. */
const LONG_SETBACK = 3;
const LONG_SHARE = 1 / 3;
/** From 1 to a twentieth takes 19 steps of 0.85; no stitch shrinks further. */
const ROUNDS = 19;

/**
 * Lines with their bands; where an end would stay bare for long, the treatments that meet there made smaller.
 *
 * @param memory what is known of the same map under the same rules
 */
export function narrowedLines(
  map: SeamMap,
  asks: readonly LineAsk[],
  rules: FitRules,
  memory: Memory = new Memory(),
): Lines {
  const lines = new Map<number | 'outline', Line>();
  const ways = new Map(waysOf(map, asks, rules.gap, memory).map((way) => [way.ask.seam, way]));
  const places = new Map(asks.map(({ seam }, l) => [seam, l]));
  const banded = (way: Way, wanted: number): Line => {
    const known = memory.of('bands', places.get(way.ask.seam)!, [way], () => new Map<number, Line>());
    const line = known.get(wanted) ?? bandedLine(way, wanted, rules.gap);
    known.set(wanted, line);
    return line;
  };
  for (const way of ways.values()) lines.set(way.ask.seam, banded(way, 1));
  const meet = memory.of('meeting', 0, [map], () => meetingLines(map));
  // Only lines that were narrowed, or meet one that was, can have come closer or further since the round before.
  let changed: Iterable<Line> = lines.values();
  for (let round = 0; round < ROUNDS; round++) {
    const narrow = new Set<Line>();
    for (const line of changed) {
      const partners = memory.of(
        `too far back ${round}`,
        places.get(line.ask.seam)!,
        withMeeting(line, lines, meet),
        () => tooFarBack(map, lines, line, rules),
      );
      for (const partner of partners) {
        if (partner.scale > partner.ask.sized.least + 1e-9) narrow.add(partner);
      }
    }
    if (narrow.size === 0) break;
    const touched = new Set<number | 'outline'>();
    for (const line of narrow) {
      const scale = Math.max(line.ask.sized.least, line.scale * NARROWING);
      lines.set(line.ask.seam, banded(ways.get(line.ask.seam)!, scale));
      touched.add(line.ask.seam);
      for (const seam of meet.get(line.ask.seam) ?? []) touched.add(seam);
    }
    changed = [...lines.values()].filter(({ ask }) => touched.has(ask.seam));
  }
  return lines;
}

/** For every line those it shares a junction with, itself among them. */
export type Meeting = ReadonlyMap<number | 'outline', ReadonlySet<number | 'outline'>>;

/** A line and those it meets, dressed or not: all that its ends depend on. */
export function withMeeting(line: Line, lines: Lines, meet: Meeting): [object, ...object[]] {
  return [line, ...[...(meet.get(line.ask.seam) ?? [])].map((seam) => lines.get(seam) ?? UNDRESSED)];
}

/** Stands for a line that has no treatment. */
const UNDRESSED = {};

export function meetingLines(map: SeamMap): Meeting {
  const meet = new Map<number | 'outline', Set<number | 'outline'>>();
  for (const { arms } of map.junctions) {
    for (const { seam } of arms) {
      const others = meet.get(seam) ?? new Set();
      for (const other of arms) others.add(other.seam);
      meet.set(seam, others);
    }
  }
  return meet;
}

/** The treatments to narrow because this line would have to end too far from a junction; none when all is well. */
function tooFarBack(map: SeamMap, lines: Lines, line: Line, rules: FitRules): Line[] {
  const found: Line[] = [];
  const length = line.walk.guide.length;
  for (const span of spansOf(line.walk, endRules(map, lines, line, rules))) {
    for (const end of [span.start, span.end]) {
      if (end.setback <= 0 || end.junction < 0) continue;
      const partners = partnersAt(map.junctions[end.junction], lines, line);
      const widest = Math.max(0, ...partners.map((partner) => Math.max(...reaches(partner))));
      const own = Math.max(...reaches(line));
      if (end.setback > LONG_SETBACK * (own + widest) || end.setback > LONG_SHARE * length) {
        found.push(line, ...partners);
      }
    }
  }
  return found;
}

function partnersAt(junction: Junction, lines: Lines, line: Line): Line[] {
  const seams = new Set(junction.arms.map((arm) => arm.seam));
  seams.delete(line.ask.seam);
  return [...seams].map((seam) => lines.get(seam)).filter((other) => other !== undefined);
}

function reaches(line: Line): [number, number] {
  const { left, right } = reachAt(line.band, line.walk.guide.length / 2);
  return [left, right];
}
