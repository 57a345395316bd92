import { between, distance, wrapAngle } from '../geometry/point.js';
import { type Points, pointAt, pointCount, polylineLength } from '../geometry/polyline.js';
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

/**
 * Direction of an arm: from its junction to the point ARM_CHORD along it, or to its end.
 *
 * @param back the arm leaves from the end of the line
 */
export function armDirection(points: Points, back = false): number {
  const n = pointCount(points);
  // a loop shorter than the chord comes back to its start: take half of it
  const closed = points[0] === points[2 * n - 2] && points[1] === points[2 * n - 1];
  const longest = closed ? polylineLength(points) / 2 : Number.POSITIVE_INFINITY;
  const start = pointAt(points, back ? n - 1 : 0);
  let left = Math.min(ARM_CHORD, longest);
  let [x, y] = start;
  for (let k = 1; k < n && left > 0; k++) {
    const to = pointAt(points, back ? n - 1 - k : k);
    const step = distance([x, y], to);
    const share = step > left ? left / step : 1;
    [x, y] = between([x, y], to, share);
    left -= step;
  }
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
