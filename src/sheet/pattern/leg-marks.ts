import type { Chain } from '../../fit/fit.js';
import type { Point } from '../../geometry/point.js';
import { cumulativeLength, fromPoints, type Points } from '../../geometry/polyline.js';
import { pointAtLength } from '../../geometry/polyline-part.js';

/** What a needlewoman marks of some thread. */
export interface LegMarks {
  /** legs as lines, petals, cords and knots as outlines */
  readonly lines: readonly Points[];
  /** where the needle goes through the cloth, x y x y ..., as often as legs meet there */
  readonly points: Points;
  /** of knots, among them: their ring is mark enough */
  readonly knots: Points;
}

/** A ring smaller than this is filled by the pen that draws it, mm. */
const LEAST_RING = 0.45;
/** A satin's outline is told by points so far apart, mm. */
const OUTLINE_STEP = 0.4;
/**
 * Legs between the same two holes that stray less than this from the straight between them, mm, are one broad stitch: what a
 * machine sews as a spindle lies as a single thread by hand.
 */
const ONE_STITCH = 0.5;
/** Legs whose ends and middle agree to this, mm, are one line on paper. */
const SAME_LINE = 0.02;

/**
 * The marks of chains: every visible leg once, however many passes it gets, and the ends of each. What the hand does
 * behind the cloth is not marked. Linear in the points of the legs.
 */
export function legMarks(chains: readonly Chain[]): LegMarks {
  const lines: Points[] = [];
  const points: number[] = [];
  const knots: number[] = [];
  const drawn = new Set<string>();
  for (const chain of chains) {
    const { nodes, from, to, kind, size, path, pathStart } = chain;
    const twins = twinsAmong(chain);
    for (let leg = 0; leg < from.length; leg++) {
      if (kind[leg] === 'under') continue;
      const [a, b] = [2 * from[leg], 2 * to[leg]];
      if (kind[leg] === 'knot') {
        knots.push(nodes[a], nodes[a + 1]);
        lines.push(ringAbout([nodes[a], nodes[a + 1]], Math.max(LEAST_RING, size[leg] / 2)));
        continue;
      }
      points.push(nodes[a], nodes[a + 1], nodes[b], nodes[b + 1]);
      const line = twins.has(leg)
        ? Float64Array.of(nodes[a], nodes[a + 1], nodes[b], nodes[b + 1])
        : path.slice(2 * pathStart[leg], 2 * pathStart[leg + 1]);
      const key = lineKey(line);
      if (drawn.has(key)) continue;
      drawn.add(key);
      const isSatin = kind[leg] === 'petal' || kind[leg] === 'cord';
      lines.push(isSatin ? satinOutline(line, size[leg] / 2, kind[leg] === 'petal') : line);
    }
  }
  return { lines, points: Float64Array.from([...points, ...knots]), knots: Float64Array.from(knots) };
}

/** Legs that are one stitch with another. */
function twinsAmong({ from, to, kind, path, pathStart }: Chain): Set<number> {
  const between = new Map<string, number[]>();
  for (let leg = 0; leg < from.length; leg++) {
    if (kind[leg] !== 'straight' && kind[leg] !== 'curve') continue;
    if (strayFromChord(path.subarray(2 * pathStart[leg], 2 * pathStart[leg + 1])) > ONE_STITCH) continue;
    const key = [from[leg], to[leg]].sort((a, b) => a - b).join();
    between.set(key, [...(between.get(key) ?? []), leg]);
  }
  return new Set([...between.values()].filter((legs) => legs.length > 1).flat());
}

/** How far a line lies from the straight between its ends, mm. */
function strayFromChord(line: Points): number {
  const last = line.length - 2;
  const [dx, dy] = [line[last] - line[0], line[last + 1] - line[1]];
  const length = Math.hypot(dx, dy);
  let most = 0;
  for (let i = 2; i < last; i += 2) {
    const [x, y] = [line[i] - line[0], line[i + 1] - line[1]];
    most = Math.max(most, length > 0 ? Math.abs(dx * y - dy * x) / length : Math.hypot(x, y));
  }
  return most;
}

/** One name for a line and the same one run the other way. */
function lineKey(line: Points): string {
  const last = line.length - 2;
  const middle = 2 * (line.length >> 2);
  const other = 2 * ((last >> 1) - (middle >> 1));
  const spot = (i: number) => `${Math.round(line[i] / SAME_LINE)},${Math.round(line[i + 1] / SAME_LINE)}`;
  return [[0, middle, last].map(spot).join(';'), [last, other, 0].map(spot).join(';')].sort()[0];
}

/** A closed line of so small chords that it looks round. */
export function ringAbout([x, y]: Point, radius: number): Points {
  const sides = Math.max(24, Math.ceil(16 * Math.sqrt(radius)));
  return fromPoints(
    Array.from({ length: sides + 1 }, (_, k): Point => {
      const angle = (2 * Math.PI * (k % sides)) / sides;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    }),
  );
}

/** The outline of satin along a line, as wide as the needle works it: pointed at both ends, or equally wide all along. */
function satinOutline(line: Points, half: number, isPointed: boolean): Points {
  const at = cumulativeLength(line);
  const length = at[at.length - 1];
  const pieces = Math.max(8, Math.ceil(length / OUTLINE_STEP));
  const left: Point[] = [];
  const right: Point[] = [];
  for (let k = 0; k <= pieces; k++) {
    const u = (length * k) / pieces;
    const before = pointAtLength(line, at, Math.max(0, u - 0.1));
    const after = pointAtLength(line, at, Math.min(length, u + 0.1));
    const run = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1;
    const [nx, ny] = [(after[1] - before[1]) / run, (before[0] - after[0]) / run];
    const reach = isPointed ? half * Math.sqrt(Math.max(0, Math.sin((Math.PI * k) / pieces))) : half;
    const [x, y] = pointAtLength(line, at, u);
    left.push([x + reach * nx, y + reach * ny]);
    right.push([x - reach * nx, y - reach * ny]);
  }
  return fromPoints([...left, ...right.reverse(), left[0]]);
}

/** Both edges of something laid along a line, such as ribbon. */
export function edgesBeside(line: Points, half: number): Points[] {
  const outline = satinOutline(line, half, false);
  const side = (outline.length - 2) / 2;
  return [outline.slice(0, side), outline.slice(side, 2 * side)];
}
