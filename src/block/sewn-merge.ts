import { distance, type Point } from '../geometry/point.js';
import { SNAP } from '../geometry/tolerances.js';
import { type Pass, TIE } from './sewn-passes.js';
import {
  type LaidPath,
  lay,
  reversedPath,
  type SewnPath,
  sameSide,
  sidesOf,
  withPoints,
} from './sewn-path.js';
import { closeIfRing } from './sewn-ring.js';
import { along, away } from './sewn-side.js';

/** A second pass is told apart from a line that only crosses: its points keep their distance this well. */
const ALONGSIDE = 0.2;
/** Points this near a corner may belong to either of its sides and help to fit neither. */
const NEAR_CORNER = 0.6;

/** Passes that lie on each other become one path; stretches that go straight on in each other are joined. */
export function mergePasses(passes: readonly Pass[], allowance: number): SewnPath[] {
  const growing: Growing[] = [];
  const longestFirst = passes
    .map((pass) => ({ pass, length: lengthOf(pass.points) }))
    .sort((a, b) => b.length - a.length);
  for (const { pass } of longestFirst) {
    const covered = new Uint8Array(pass.points.length);
    for (const path of growing) absorb(pass, path, covered);
    for (const part of uncovered(pass, covered, growing)) growing.push(grow(part));
  }
  return joinStraightOn(growing.map(fitted)).map((path) => closeIfRing(path, allowance));
}

/** A path while passes are still added to it. */
interface Growing {
  readonly path: SewnPath;
  readonly laid: LaidPath;
  /** left, top, right, bottom with room for its reach */
  readonly box: readonly [number, number, number, number];
  /** more needle points, side by side */
  readonly more: Point[][];
  /** longest stitch of those passes, mm */
  stitch: number;
  /** of the last of them */
  order: number;
}

function grow(path: SewnPath): Growing {
  const laid = lay(path);
  const xs = laid.points.map((p) => p[0]);
  const ys = laid.points.map((p) => p[1]);
  const room = path.stitch + SNAP;
  return {
    path,
    laid,
    box: [Math.min(...xs) - room, Math.min(...ys) - room, Math.max(...xs) + room, Math.max(...ys) + room],
    more: path.sides.map(() => []),
    stitch: path.stitch,
    order: path.order,
  };
}

function fitted({ path, more, stitch, order }: Growing): SewnPath {
  const sides = path.sides.map((side, i) => (more[i].length ? withPoints(side, more[i]) : side));
  const reach = [Math.max(path.reach[0], stitch / 2), Math.max(path.reach[1], stitch / 2)] as const;
  return { ...path, sides, stitch, reach, order };
}

/** Marks the points of a pass that lie along the path and gives them to its sides. */
function absorb(pass: Pass, target: Growing, covered: Uint8Array): void {
  const { points } = pass;
  const near = points.map((p) => nearest(target, p));
  for (let first = 0; first < points.length; first++) {
    if (near[first] === null) continue;
    let end = first + 1;
    while (end < points.length && near[end] !== null) end++;
    if (alongside(points, first, end, near, target)) {
      target.stitch = Math.max(target.stitch, pass.stitch);
      target.order = Math.max(target.order, pass.order);
      for (let i = first; i < end; i++) {
        covered[i] = 1;
        const side = near[i];
        if (side !== null) give(target, side, points[i]);
      }
    }
    first = end;
  }
}

function alongside(
  points: readonly Point[],
  first: number,
  end: number,
  near: readonly (number | null)[],
  { path }: Growing,
): boolean {
  if (end - first !== 2) return end - first > 2;
  const side = near[first];
  if (side === null || side !== near[first + 1]) return false;
  const [a, b] = [points[first], points[first + 1]].map((p) => away(path.sides[side].side, p));
  return Math.abs(a - b) <= ALONGSIDE;
}

function give({ path, laid, more }: Growing, side: number, p: Point): void {
  if (Math.abs(away(path.sides[side].side, p)) > SNAP / 2) return;
  for (let i = 1; i < laid.sideOf.length; i++) {
    if (laid.sideOf[i] !== laid.sideOf[i - 1] && distance(laid.points[i], p) < NEAR_CORNER) return;
  }
  more[side].push(p);
}

/** The side of the path within SNAP of a point, the path's ends made longer by a stitch; null when there is none. */
function nearest({ path, laid, box }: Growing, p: Point): number | null {
  if (p[0] < box[0] || p[1] < box[1] || p[0] > box[2] || p[1] > box[3]) return null;
  let least = SNAP;
  let side: number | null = null;
  const last = laid.points.length - 2;
  for (let i = 0; i <= last; i++) {
    const a = laid.points[i];
    const b = laid.points[i + 1];
    const length = distance(a, b);
    if (length === 0) continue;
    const u = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length;
    const from = i === 0 && !path.closed ? -path.stitch : 0;
    const to = i === last && !path.closed ? length + path.stitch : length;
    const foot = Math.max(from, Math.min(to, u)) / length;
    const off = Math.hypot(p[0] - a[0] - foot * (b[0] - a[0]), p[1] - a[1] - foot * (b[1] - a[1]));
    if (off <= least) {
      least = off;
      side = laid.sideOf[i];
    }
  }
  return side;
}

/** What is left of a pass, each part with the covered point it comes from or goes to: there it may fall a stitch short. */
function uncovered(pass: Pass, covered: Uint8Array, paths: readonly Growing[]): SewnPath[] {
  const parts: SewnPath[] = [];
  const n = pass.points.length;
  for (let i = 0; i < n; i++) {
    if (covered[i]) continue;
    let end = i + 1;
    while (end < n && !covered[end]) end++;
    const tiedStart = i > 0;
    const tiedEnd = end < n;
    const points = pass.points.slice(i - (tiedStart ? 1 : 0), end + (tiedEnd ? 1 : 0));
    const strayed = end - i === 1 && points.length > 1 && paths.some((path) => besides(path, pass.points[i]));
    const sides =
      points.length > 1 && lengthOf(points) >= TIE && !strayed ? sidesOf(points, [tiedStart, tiedEnd]) : [];
    const short = pass.stitch / 2;
    if (sides.length) {
      const reach = [tiedStart ? pass.stitch : short, tiedEnd ? pass.stitch : short] as const;
      parts.push({ sides, closed: false, stitch: pass.stitch, reach, stop: pass.stop, order: pass.order });
    }
    i = end;
  }
  return parts;
}

const besides = ({ path }: Growing, p: Point): boolean =>
  path.sides.some(({ side, points }) => {
    const u = along(side, p);
    const from = along(side, points[0]) - path.stitch;
    const to = along(side, points[points.length - 1]) + path.stitch;
    return u >= from && u <= to && Math.abs(away(side, p)) <= 2 * SNAP;
  });

/** Paths whose ends lie on one line or circle and nearly touch become one. */
function joinStraightOn(paths: readonly SewnPath[]): SewnPath[] {
  const open = [...paths];
  const tips = open.map(tipsOf);
  for (let i = 0; i < open.length; i++) {
    for (let k = 0; k < open.length; k++) {
      const reach = Math.max(open[i].stitch, open[k].stitch) + SNAP;
      if (k === i || !tips[i].some((p) => tips[k].some((q) => distance(p, q) <= reach))) continue;
      const longer = joined(open[i], open[k]);
      if (!longer) continue;
      open[i] = longer;
      tips[i] = tipsOf(longer);
      open.splice(k, 1);
      tips.splice(k, 1);
      if (k < i) i--;
      k = -1;
    }
  }
  return open;
}

/** First and last needle point. */
function tipsOf({ sides }: SewnPath): readonly [Point, Point] {
  const last = sides[sides.length - 1].points;
  return [sides[0].points[0], last[last.length - 1]];
}

function joined(p: SewnPath, q: SewnPath): SewnPath | null {
  for (const a of [p, reversedPath(p)]) {
    for (const b of [q, reversedPath(q)]) {
      const last = a.sides[a.sides.length - 1];
      const first = b.sides[0];
      const gap = along(last.side, first.points[0]) - along(last.side, last.points[last.points.length - 1]);
      const stitch = Math.max(a.stitch, b.stitch);
      if (Math.abs(gap) > stitch) continue;
      const both = sameSide(last, first);
      if (!both) continue;
      return {
        ...a,
        sides: [...a.sides.slice(0, -1), both, ...b.sides.slice(1)],
        stitch,
        reach: [a.reach[0], b.reach[1]],
        order: Math.max(a.order, b.order),
      };
    }
  }
  return null;
}

function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) sum += distance(points[i - 1], points[i]);
  return sum;
}
