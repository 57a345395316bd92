import type { FigureLine } from '../formats/svg-figure.js';
import type { Subpath } from '../formats/svg-shape.js';
import { distance } from '../geometry/point.js';
import { lastPoint, pointsInside, thinned } from './drawn-curve.js';
import type { DrawnPoints } from './drawn-points.js';
import { passesOf, USUAL_PASSES } from './drawn-words.js';
import type { LegRecord } from './stitch-record.js';

/** An under-leg is led through this many points at most. */
const MOST_BENDS = 8;

/** A leg and the line it was drawn as. */
export interface DrawnLeg {
  readonly leg: LegRecord;
  readonly line: FigureLine;
}

/** The legs that lines stand for, in their order; the holes and bends they need are added to `points`. */
export function drawnLegs(lines: readonly FigureLine[], points: DrawnPoints): DrawnLeg[] {
  const drawn: DrawnLeg[] = [];
  const anchors = new Map<number, string>();
  const names = namesOf(lines);
  lines.forEach((line, k) => {
    const ends = endsOf(line.line, points);
    const { group } = line;
    // a group keeps its shape about the hole it begins in
    if (group >= 0 && !anchors.has(group)) anchors.set(group, ends.from);
    const passes = passesOf(line);
    const rest = {
      ...(group >= 0 && { keepsShapeAt: anchors.get(group) }),
      ...(passes > 0 && passes !== USUAL_PASSES && { share: Number((passes / USUAL_PASSES).toFixed(2)) }),
    };
    const legs =
      passes === 0
        ? [{ kind: 'under' as const, ...ends, ...underneath(line.line, ends, drawn, points) }]
        : bent(line.line, ends, points);
    legs.forEach((leg, part) => {
      const name = legs.length > 1 ? `${names[k]} ${part + 1}` : names[k];
      drawn.push({ leg: { name, ...leg, ...rest }, line });
    });
  });
  return drawn;
}

interface Ends {
  readonly from: string;
  readonly to: string;
}

const endsOf = ({ start, pieces }: Subpath, points: DrawnPoints): Ends => ({
  from: points.hole(start),
  to: points.hole(lastPoint(start, pieces)),
});

/** A name for the leg of each line: its id, or its number; lines of one element count on. */
function namesOf(lines: readonly FigureLine[]): string[] {
  const wanted = lines.map(({ attributes }, k) => attributes.id || `leg ${k + 1}`);
  const taken = new Set(wanted);
  return wanted.map((name, k) => {
    if (wanted.indexOf(name) === k) return name;
    for (let number = 2; ; number++) {
      const other = `${name} ${number}`;
      if (taken.has(other)) continue;
      taken.add(other);
      return other;
    }
  });
}

/** Behind the cloth: beneath a leg that has the same two ends, else along its own line. */
function underneath(
  { start, pieces }: Subpath,
  { from, to }: Ends,
  drawn: readonly DrawnLeg[],
  points: DrawnPoints,
): { beneath?: string; via?: string[] } {
  const cover = drawn.find(
    ({ leg }) =>
      'from' in leg && leg.kind !== 'under' && [leg.from, leg.to].sort().join() === [from, to].sort().join(),
  );
  if (cover) return { beneath: cover.leg.name };
  const via = thinned(pointsInside(start, pieces), MOST_BENDS).map((p) => points.bend(p));
  return via.length ? { via } : {};
}

type BentLeg = Ends & ({ kind: 'straight' } | { kind: 'curve'; via?: string[]; through?: string[] });

/** A line as one leg; one that comes back to its start is turned at its furthest point, and is two. */
function bent({ start, pieces }: Subpath, { from, to }: Ends, points: DrawnPoints): BentLeg[] {
  const [only] = pieces;
  const isClosed = from === to;
  if (pieces.length === 1 && only.kind === 'straight') return [{ kind: 'straight', from, to }];
  if (pieces.length === 1 && only.kind === 'bezier' && !isClosed) {
    const via = only.control.slice(1, -1).map((p) => points.bend(p));
    return [{ kind: 'curve', from, to, via }];
  }
  const inside = pointsInside(start, pieces);
  const led = (ends: Ends, by: typeof inside): BentLeg =>
    by.length
      ? { kind: 'curve', ...ends, through: by.map((p) => points.bend(p)) }
      : { kind: 'straight', ...ends };
  if (!isClosed || inside.length === 0) return [led({ from, to }, inside)];
  const far = inside.reduce(
    (best, p, i) => (distance(p, start) > distance(inside[best], start) ? i : best),
    0,
  );
  const tip = points.hole(inside[far]);
  return [led({ from, to: tip }, inside.slice(0, far)), led({ from: tip, to }, inside.slice(far + 1))];
}
