import type { Junction, SeamMap } from '../block/seam-map.js';
import type { FitRules } from './ask.js';
import { reachAt } from './band.js';
import { bandedLine, endRules, type Line, type Lines, NARROWING, type Way } from './lines.js';
import { type Answers, either, type Memory, withLinked } from './memory.js';
import { isSame } from './same.js';
import { spansOf } from './spans.js';

/** A setback longer than this many reaches, or than this share of the line, narrows both treatments first. */
const LONG_SETBACK = 3;
const LONG_SHARE = 1 / 3;
/** From 1 to a twentieth takes 19 steps of 0.85; no stitch shrinks further. */
const ROUNDS = 19;

type Seam = number | 'outline';

/** The lines that are asked for, by number, and which of them share a junction. */
export interface Meeting {
  readonly places: ReadonlyMap<Seam, number>;
  /** for every line the others that it meets */
  readonly met: readonly (readonly number[])[];
}

export function meetingLines({ junctions }: SeamMap, seams: readonly Seam[]): Meeting {
  const places = new Map(seams.map((seam, l) => [seam, l]));
  const met = seams.map(() => new Set<number>());
  for (const { arms } of junctions) {
    const here = new Set(arms.flatMap(({ seam }) => places.get(seam) ?? []));
    for (const one of here) for (const other of here) if (one !== other) met[one].add(other);
  }
  return { places, met: met.map((others) => [...others]) };
}

/** The lines as they are known now, by their seams. */
export const linesAt = (places: ReadonlyMap<Seam, number>, lines: readonly Line[]): Lines => ({
  get: (seam) => lines[places.get(seam) ?? -1],
  has: (seam) => places.has(seam),
});

/** Lines with their bands; where an end would stay bare for long, the treatments that meet there made smaller. */
export function narrowedLines(
  map: SeamMap,
  ways: Answers<Way>,
  { places, met }: Meeting,
  rules: FitRules,
  memory: Memory,
): Answers<Line> {
  const count = ways.of.length;
  const known = memory.each('bands', count, ways.changed, () => new Map<number, Line>());
  const banded = (l: number, wanted: number): Line => {
    const line = known.of[l].get(wanted) ?? bandedLine(ways.of[l], wanted, rules.gap);
    known.of[l].set(wanted, line);
    return line;
  };
  let lines = memory.each('lines', count, known.changed, (l) => banded(l, 1));
  let verdicts: Answers<readonly number[]> | null = null;
  /** lines that the round before made narrower */
  let narrowed: readonly number[] = [];
  // All rounds of last time are gone through again, so that each knows what has changed since.
  const rounds = memory.once('rounds', () => ({ gone: 0 }));
  for (let round = 0; round < ROUNDS; round++) {
    const { of, changed } = lines;
    const all = linesAt(places, of);
    const tooFar: Answers<readonly number[]> = memory.each<readonly number[]>(
      `too far back ${round}`,
      count,
      withLinked(changed, met),
      (l, last) => {
        const partners = tooFarBack(map, all, of[l], rules).map(({ ask }) => places.get(ask.seam)!);
        return last && isSame(partners, last) ? last : partners;
      },
      // only lines that were narrowed, or meet one that was, can have come closer or further since the round before
      verdicts ? { of: verdicts.of, stale: withLinked(narrowed, met) } : undefined,
    );
    const toNarrow = new Set(tooFar.of.flat());
    const next = memory.each(
      `lines ${round}`,
      count,
      either(changed, withLinked(tooFar.changed, met)),
      (l) => {
        const { scale, ask } = of[l];
        const isLeast = scale <= ask.sized.least + 1e-9;
        return isLeast || !toNarrow.has(l) ? of[l] : banded(l, Math.max(ask.sized.least, scale * NARROWING));
      },
      { of, stale: toNarrow },
    );
    narrowed = [...toNarrow].filter((l) => next.of[l] !== of[l]);
    lines = next;
    verdicts = tooFar;
    rounds.gone = Math.max(rounds.gone, round + 1);
    if (narrowed.length === 0 && round + 1 >= rounds.gone) break;
  }
  return memory.each('narrowed', count, 'all', (l) => lines.of[l]);
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
