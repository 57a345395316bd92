import { between, distance, type Point } from '../geometry/point.js';
import {
  crossing,
  type End,
  fromEnd,
  type Line,
  type Lines,
  looseEnds,
  reachOf,
  seat,
} from './sewn-loose-lines.js';

/** An end short of a line goes on to it; two ends short of one corner both go on to it. */
export function lengthenShortEnds(lines: Lines): void {
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
  seat(line, end, [to, ...more, ...fromEnd(line, end).slice(1)]);
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
