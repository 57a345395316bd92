import { between, distance, type Point } from '../geometry/point.js';
import { SNAP } from '../geometry/tolerances.js';
import { crossing, type End, fromEnd, type Lines, tipOf } from './sewn-loose-lines.js';

/** Another line met near an end. */
export interface Meeting {
  readonly at: Point;
  /** mm from the end */
  readonly fromEnd: number;
  readonly other: number;
  /** mm from the nearer loose end of the other line; infinite where both its ends are seated or it is closed */
  readonly toOtherEnd: number;
  readonly otherEnd: 0 | 1;
}

/** All lines that cross within the allowance of an end; they count as SNAP longer than they are. */
function meetingsNear(lines: Lines, [self, end]: End, allowance: number): Meeting[] {
  const tail = fromEnd(lines.list[self], end);
  const found: Meeting[] = [];
  for (const k of lines.near(tail[0], allowance + SNAP)) {
    if (k === self) continue;
    const other = lines.list[k];
    const { at } = other;
    const whole = at[at.length - 1];
    const segments = segmentsNear(other.points, tail[0], allowance + SNAP);
    let walked = 0;
    for (let i = 1; segments.length && i < tail.length && walked < allowance; i++) {
      const step = distance(tail[i - 1], tail[i]);
      for (const j of segments) {
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

/** Which segments, by the numbers of their ends, have boxes that come so near a point. */
function segmentsNear(points: readonly Point[], [x, y]: Point, by: number): number[] {
  const found: number[] = [];
  for (let j = 1; j < points.length; j++) {
    const [a, b] = [points[j - 1], points[j]];
    if (Math.max(a[0], b[0]) < x - by || Math.min(a[0], b[0]) > x + by) continue;
    if (Math.max(a[1], b[1]) < y - by || Math.min(a[1], b[1]) > y + by) continue;
    found.push(j);
  }
  return found;
}

/** The meetings of all ends, looked for once and again where a cut has changed them. */
export class KnownMeetings {
  private readonly known = new Map<number, readonly Meeting[]>();

  constructor(
    private readonly lines: Lines,
    private readonly allowance: number,
  ) {}

  of(end: End): readonly Meeting[] {
    const key = keyOf(end);
    const known = this.known.get(key);
    if (known) return known;
    const found = meetingsNear(this.lines, end, this.allowance);
    this.known.set(key, found);
    return found;
  }

  /** Forgets what lay on a line that has been cut, and what its new end, which counts as SNAP longer, may have come to. */
  forget([line, end]: End): void {
    const tip = tipOf(this.lines.list[line], end);
    for (const [key, meetings] of this.known) {
      const other = tipOf(this.lines.list[key >> 1], key & 1 ? 1 : 0);
      const isNear = distance(other, tip) <= this.allowance + SNAP;
      if (isNear || key >> 1 === line || meetings.some((meeting) => meeting.other === line)) {
        this.known.delete(key);
      }
    }
  }
}

export const keyOf = ([line, end]: End): number => 2 * line + end;
