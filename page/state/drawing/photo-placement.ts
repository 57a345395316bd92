import { type Placement, placedPoint, unplacedPoint } from '../../../src/geometry/placement.js';
import { distance, type Point } from '../../../src/geometry/point.js';

/** How a photo lies, from its pixels to the block's mm: each change gives a new likeness. */

/** With another turn; what lies at a place stays there. */
export function turnedAbout(was: Placement, turn: number, at: Point): Placement {
  return holding({ ...was, turn }, unplacedPoint(at, was), at);
}

/** As large as makes two of its points so far apart, mm; the first one stays where it is. */
export function scaledBy(was: Placement, a: Point, b: Point, mm: number): Placement {
  return holding({ ...was, scale: mm / distance(a, b) }, a, placedPoint(a, was));
}

/** Moved so that a point lies at a place. */
function holding(likeness: Placement, point: Point, at: Point): Placement {
  const [x, y] = placedPoint(point, { ...likeness, shift: [0, 0] });
  return { ...likeness, shift: [at[0] - x, at[1] - y] };
}
