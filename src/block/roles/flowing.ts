import { distance, type Point } from '../../geometry/point.js';
import { turnAt } from '../stop-kinds.js';

/** A stretch between two ends or corners flows when it is longer than legs of hand-look stitches, mm. Common practice. */
const FLOWING = 12;
/** Legs of the widest stitches are longer; a stop that sews many has more passes than a few short seams. */
const FLOWING_AMONG_MANY = 25;
const MANY = 12;
/** Stitches of 4 mm on a radius of 7 mm turn less than this, rounding included. */
const CORNER = (40 * Math.PI) / 180;
/** A weaving thread bends tighter than this all along, mm; seams bend with 10 mm and more, rounding adds a little to that. */
const TIGHTEST = 5;

/** How much of the thread goes on as seams do, without a corner and bending gently: 0 to 1. */
export function flowingShare(passes: readonly (readonly Point[])[]): number {
  const least = passes.length > MANY ? FLOWING_AMONG_MANY : FLOWING;
  let [all, flowing] = [0, 0];
  for (const points of passes) {
    let [length, turned] = [0, 0];
    for (let i = 1; i < points.length; i++) {
      length += distance(points[i - 1], points[i]);
      const turn = i === points.length - 1 ? Infinity : Math.abs(turnAt(points, i));
      if (turn <= CORNER) {
        turned += turn;
        continue;
      }
      all += length;
      if (length >= least && turned * TIGHTEST <= length) flowing += length;
      [length, turned] = [0, 0];
    }
  }
  return all > 0 ? flowing / all : 0;
}
