import { float64s } from './flat.js';
import type { Corner, GuideLine } from './guide-line.js';

/** Bends that turn less than this are gentle, radians; those that turn more than the second wind about and have no middle. */
const LEAST_TURN = (30 * Math.PI) / 180;
const MOST_TURN = (125 * Math.PI) / 180;
/** Bending is measured over this share of the radius: samples lie closer, and single ones may lie on straight pieces. */
const STEP = 0.1;

/**
 * Where a guide line bends round something like a corner: parts that bend one way more tightly than a radius, and turn
 * 30 to 125 degrees in all. `u` is where half of the turn is done. One sweep over the samples.
 *
 * @param radius mm
 */
export function bendsOf(guide: GuideLine, radius: number): Corner[] {
  const steps = Math.ceil(guide.length / (STEP * radius));
  const step = guide.length / steps;
  const theta = directionsAt(guide, steps);
  const hand = (i: number): number => {
    const turned = theta[i + 1] - theta[i];
    return Math.abs(turned) * radius > step ? Math.sign(turned) : 0;
  };
  const found: Corner[] = [];
  for (let i = 0; i < steps; i++) {
    const way = hand(i);
    if (way === 0) continue;
    const first = i;
    while (i + 1 < steps && hand(i + 1) === way) i++;
    const turned = theta[i + 1] - theta[first];
    if (Math.abs(turned) < LEAST_TURN || Math.abs(turned) > MOST_TURN) continue;
    const half = theta[first] + turned / 2;
    let k = first;
    while ((theta[k + 1] - half) * way < 0) k++;
    // Directions grow clockwise on the page, turns count to the left.
    found.push({ u: step * (k + (half - theta[k]) / (theta[k + 1] - theta[k])), turn: -turned });
  }
  return found;
}

/** Directions at even steps of arc length, both ends included. */
function directionsAt({ u, theta, length }: GuideLine, steps: number): Float64Array {
  const at = float64s(steps + 1);
  let i = 0;
  for (let k = 0; k <= steps; k++) {
    const here = (length * k) / steps;
    while (i + 2 < u.length && u[i + 1] < here) i++;
    const along = u[i + 1] - u[i];
    const share = along > 0 ? Math.min(1, (here - u[i]) / along) : 0;
    at[k] = theta[i] + share * (theta[i + 1] - theta[i]);
  }
  return at;
}
