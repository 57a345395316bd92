import { type Point, wrapAngle } from '../geometry/point.js';
import { cumulativeLength, firstPoint, type Points } from '../geometry/polyline.js';
import { pointAtLength } from '../geometry/polyline-part.js';
import { ARM_CHORD } from '../geometry/tolerances.js';

/** Arms that turn more than this do not run on as one line. */
const MOST_TURN = Math.PI / 6;
/** A pair must be straighter than either arm's next choice by this much, or nobody runs through. */
const CLEAR_BY = Math.PI / 18;
/** Turns nearer than this are equal: directions are good to about 1e-9. */
const EQUAL = 1e-7;

/** Two arms of a junction that make one line, by their places in the list, and how much it turns there, radians. */
export interface ArmPair {
  readonly arms: readonly [number, number];
  readonly turn: number;
}

/** Direction of an arm: from its junction to the point ARM_CHORD along it, or to its end. */
export function armDirection(points: Points): number {
  const at = cumulativeLength(points);
  const start: Point = firstPoint(points);
  // a loop shorter than the chord comes back to its start: take half of it
  const closed = points[0] === points[points.length - 2] && points[1] === points[points.length - 1];
  const longest = at[at.length - 1] / (closed ? 2 : 1);
  const [x, y] = pointAtLength(points, at, Math.min(ARM_CHORD, longest));
  return Math.atan2(y - start[1], x - start[0]);
}

/** Pairs the arms of a junction, straightest first; ambiguous ones stay single. */
export function pairArms(directions: readonly number[]): ArmPair[] {
  const turnOf = (i: number, j: number) => Math.abs(wrapAngle(directions[i] - directions[j] - Math.PI));
  const candidates: ArmPair[] = [];
  for (let i = 0; i < directions.length; i++) {
    for (let j = i + 1; j < directions.length; j++) {
      if (turnOf(i, j) <= MOST_TURN + EQUAL) candidates.push({ arms: [i, j], turn: turnOf(i, j) });
    }
  }
  candidates.sort((a, b) => a.turn - b.turn);
  const free = new Set(directions.keys());
  const pairs: ArmPair[] = [];
  for (let k = 0; k < candidates.length; ) {
    const pair = candidates[k];
    const [i, j] = pair.arms;
    const next = (a: number, mate: number) =>
      Math.min(...[...free].filter((b) => b !== a && b !== mate).map((b) => turnOf(a, b)));
    const isClear = Math.min(next(i, j), next(j, i)) - pair.turn >= CLEAR_BY - EQUAL;
    if (!isClear) {
      k++;
      continue;
    }
    pairs.push(pair);
    free.delete(i);
    free.delete(j);
    // with two arms gone, an ambiguous pair may have become clear
    candidates.splice(
      0,
      candidates.length,
      ...candidates.filter(({ arms: [a, b] }) => free.has(a) && free.has(b)),
    );
    k = 0;
  }
  return pairs;
}
