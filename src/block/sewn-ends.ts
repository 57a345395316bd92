import Flatbush from 'flatbush';
import { between, distance, type Point } from '../geometry/point.js';
import { SNAP } from '../geometry/tolerances.js';

/** A line whose ends are still as they were sewn. */
export interface LooseLine {
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** where the line would go on at either end, from the end outward, as far as it may be short of its seam */
  readonly beyond: readonly [readonly Point[], readonly Point[]];
}

/** A line with its ends where they belong; `seated` tells which of them lie on another line. */
interface Line {
  points: Point[];
  readonly closed: boolean;
  readonly beyond: readonly [readonly Point[], readonly Point[]];
  readonly seated: [boolean, boolean];
}

interface Lines {
  readonly list: readonly Line[];
  /** numbers of the lines whose boxes, as sewn, come so near a point; rising. Cuts only make lines smaller. */
  near(p: Point, by: number): number[];
  /** the farthest that any line goes on beyond an end, mm */
  readonly longest: number;
}

type Box = readonly [number, number, number, number];

/** Another line met near an end. */
interface Meeting {
  readonly at: Point;
  /** mm from the end */
  readonly fromEnd: number;
  readonly other: number;
  /** mm from the nearer loose end of the other line; infinite where both its ends are seated or it is closed */
  readonly toOtherEnd: number;
  readonly otherEnd: 0 | 1;
}

type End = readonly [line: number, end: 0 | 1];

/**
 * Brings the ends of sewn lines onto the lines they are meant for. What runs over another line by less than the
 * allowance is cut there; what falls short of one by no more than its reach is made longer.
 *
 * Two lines that run over each other's ends cross there too, so cuts begin where there is no doubt: on a line that goes
 * on for more than the allowance to both sides. Each cut end takes its own overrun out of the play. A crossing that both
 * lines pass by more than the allowance is a crossing and stays.
 */
export function settleEnds(loose: readonly LooseLine[], allowance: number): Point[][] {
  const list = loose.map(
    ({ points, closed, beyond }): Line => ({ points: [...points], closed, beyond, seated: [closed, closed] }),
  );
  const longest = Math.max(0, ...loose.flatMap(({ beyond }) => beyond.map(reachOf)));
  const lines: Lines = { list, near: boxesNear(loose.map(({ points }) => boxOf(points))), longest };
  while (cutFirmOverruns(lines, allowance) || cutMutualOverruns(lines, allowance)) {
    // each round seats at least one end
  }
  lengthenShortEnds(lines);
  return list.map(({ points }) => points);
}

function boxesNear(boxes: readonly Box[]): Lines['near'] {
  if (!boxes.length) return () => [];
  const index = new Flatbush(boxes.length);
  for (const [left, top, right, bottom] of boxes) index.add(left, top, right, bottom);
  index.finish();
  return ([x, y], by) => index.search(x - by, y - by, x + by, y + by).sort((a, b) => a - b);
}

const reachOf = (way: readonly Point[]): number => distance(way[0], way[way.length - 1]);

function looseEnds({ list }: Lines): End[] {
  return list.flatMap((line, i) => ([0, 1] as const).filter((e) => !line.seated[e]).map((e): End => [i, e]));
}

function cutFirmOverruns(lines: Lines, allowance: number): boolean {
  const cuts = looseEnds(lines).flatMap((end) => {
    const firm = meetingsNear(lines, end, allowance).filter((m) => m.toOtherEnd >= allowance);
    return firm.length ? [{ end, meeting: innermost(firm) }] : [];
  });
  for (const { end, meeting } of cuts) cut(lines, end, meeting);
  return cuts.length > 0;
}

/** Two overruns across each other make a corner of both lines; failing that, the least doubtful cut is made. */
function cutMutualOverruns(lines: Lines, allowance: number): boolean {
  const found = looseEnds(lines).flatMap((end) => {
    const meetings = meetingsNear(lines, end, allowance);
    return meetings.length ? [{ end, meeting: innermost(meetings) }] : [];
  });
  for (const a of found) {
    const b = found.find(
      ({ end, meeting }) =>
        end[0] === a.meeting.other && end[1] === a.meeting.otherEnd && meeting.other === a.end[0],
    );
    if (!b || distance(a.meeting.at, b.meeting.at) > SNAP) continue;
    cut(lines, a.end, a.meeting);
    cut(lines, b.end, a.meeting);
    return true;
  }
  const [surest] = found.sort((a, b) => b.meeting.toOtherEnd - a.meeting.toOtherEnd);
  if (surest) cut(lines, surest.end, surest.meeting);
  return surest !== undefined;
}

const innermost = (meetings: readonly Meeting[]): Meeting =>
  meetings.reduce((a, b) => (b.fromEnd > a.fromEnd ? b : a));

/** All lines that cross within the allowance of an end; they count as SNAP longer than they are. */
function meetingsNear(lines: Lines, [self, end]: End, allowance: number): Meeting[] {
  const tail = fromEnd(lines.list[self], end);
  const found: Meeting[] = [];
  for (const k of lines.near(tail[0], allowance + SNAP)) {
    if (k === self) continue;
    const other = lines.list[k];
    const at = lengths(other.points);
    const whole = at[at.length - 1];
    let walked = 0;
    for (let i = 1; i < tail.length && walked < allowance; i++) {
      const step = distance(tail[i - 1], tail[i]);
      for (let j = 1; j < other.points.length; j++) {
        const [a, b] = [other.points[j - 1], other.points[j]];
        const stretch = at[j] - at[j - 1];
        const before = j === 1 && !other.closed ? SNAP / stretch : 0;
        const behind = j === other.points.length - 1 && !other.closed ? SNAP / stretch : 0;
        const hit = crossing(tail[i - 1], tail[i], a, b, before, behind);
        if (!hit) continue;
        const fromTip = walked + hit.t * step;
        if (fromTip >= allowance) continue;
        const u = at[j - 1] + hit.s * stretch;
        const room = [other.seated[0] ? Infinity : u, other.seated[1] ? Infinity : whole - u];
        const otherEnd = room[0] <= room[1] ? 0 : 1;
        found.push({
          at: between(a, b, Math.max(0, Math.min(1, hit.s))),
          fromEnd: fromTip,
          other: k,
          toOtherEnd: room[otherEnd],
          otherEnd,
        });
      }
      walked += step;
    }
  }
  return found;
}

function cut(lines: Lines, [self, end]: End, { at, fromEnd: over }: Meeting): void {
  const line = lines.list[self];
  const tail = fromEnd(line, end);
  let walked = 0;
  let first = 1;
  while (first < tail.length - 1 && walked + distance(tail[first - 1], tail[first]) <= over) {
    walked += distance(tail[first - 1], tail[first]);
    first++;
  }
  replace(line, end, [at, ...tail.slice(first)]);
}

function replace(line: Line, end: 0 | 1, points: Point[]): void {
  line.points = end ? points.reverse() : points;
  line.seated[end] = true;
}

/** An end short of a line goes on to it; two ends short of one corner both go on to it. */
function lengthenShortEnds(lines: Lines): void {
  for (const [self, end] of looseEnds(lines)) {
    if (lines.list[self].seated[end]) continue;
    const hit = firstHit(lines, [self, end]);
    if (!hit) continue;
    lengthen(lines.list[self], end, hit.steps, hit.at);
    if (hit.end !== null) lengthen(lines.list[hit.other], hit.end, hit.otherSteps, hit.at);
  }
}

function lengthen(line: Line, end: 0 | 1, steps: number, to: Point): void {
  const more = line.beyond[end].slice(1, steps).reverse();
  // the old tip is a point within a side, so it goes
  replace(line, end, [to, ...more, ...fromEnd(line, end).slice(1)]);
}

interface Hit {
  readonly at: Point;
  /** mm from the tip */
  readonly far: number;
  /** in which step beyond the tip */
  readonly steps: number;
  readonly other: number;
  /** the end of the other line that has to go on to the place as well, and in which of its steps */
  readonly end: 0 | 1 | null;
  readonly otherSteps: number;
}

function firstHit(lines: Lines, [self, end]: End): Hit | null {
  const way = lines.list[self].beyond[end];
  let best: Hit | null = null;
  for (const k of lines.near(way[0], reachOf(way) + lines.longest)) {
    if (k === self) continue;
    const other = lines.list[k];
    const targets: [readonly Point[], 0 | 1 | null][] = [[other.points, null]];
    for (const e of [0, 1] as const) if (!other.seated[e]) targets.push([other.beyond[e], e]);
    for (const [target, targetEnd] of targets) {
      let walked = 0;
      for (let i = 1; i < way.length; i++) {
        for (let j = 1; j < target.length; j++) {
          const hit = crossing(way[i - 1], way[i], target[j - 1], target[j], 0, 0);
          if (!hit) continue;
          const at = between(way[i - 1], way[i], hit.t);
          const far = walked + distance(way[i - 1], at);
          if (best && far >= best.far) continue;
          best = { at, far, steps: i, other: k, end: targetEnd, otherSteps: j };
        }
        walked += distance(way[i - 1], way[i]);
      }
    }
  }
  return best;
}

/** The line's points from one end on. */
const fromEnd = (line: Line, end: 0 | 1): Point[] => (end ? [...line.points].reverse() : [...line.points]);

/** Where p-q crosses a-b: shares of either; a-b is longer by shares `before` and `behind`. */
function crossing(
  p: Point,
  q: Point,
  a: Point,
  b: Point,
  before: number,
  behind: number,
): { readonly t: number; readonly s: number } | null {
  const [dx, dy, ex, ey] = [q[0] - p[0], q[1] - p[1], b[0] - a[0], b[1] - a[1]];
  const cross = dx * ey - dy * ex;
  if (cross === 0) return null;
  const t = ((a[0] - p[0]) * ey - (a[1] - p[1]) * ex) / cross;
  const s = ((a[0] - p[0]) * dy - (a[1] - p[1]) * dx) / cross;
  return t >= 0 && t <= 1 && s >= -before && s <= 1 + behind ? { t, s } : null;
}

/** Left, top, right and bottom of some points. */
export function boxOf(points: readonly Point[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return [left, top, right, bottom];
}

function lengths(points: readonly Point[]): number[] {
  const at = [0];
  for (let i = 1; i < points.length; i++) at.push(at[i - 1] + distance(points[i - 1], points[i]));
  return at;
}
