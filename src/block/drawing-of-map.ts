import { type DrawnSeam, OUTLINE, type SeamDrawing, type SeamNode } from '../formats/seam-drawing.js';
import { fittedCurve } from '../geometry/fitted-curve.js';
import type { Corner } from '../geometry/guide-line.js';
import { cumulativeLength, type Points } from '../geometry/polyline.js';
import { partOf } from '../geometry/polyline-part.js';
import type { SeamMap } from './seam-map.js';

/** Lines may stray so far from the seams that they are drawn after, mm: written and read again they are within 0.01. */
const TRUE_TO = 0.008;

/** The seams of a block as lines that can be changed; each has its seam's number. */
export function drawingOfMap({ width, height, outline, seams }: SeamMap): SeamDrawing {
  const lines: DrawnSeam[] = [];
  for (const { id, points, corners, closed } of seams) lines.push(lineOf(id, points, corners, closed));
  return {
    width,
    height,
    outline: outline && lineOf(OUTLINE, outline.points, outline.corners, true),
    lines,
  };
}

/** A line part by part, from corner to corner; a ring without corners begins anywhere. */
function lineOf(id: number, points: Points, corners: readonly Corner[], closed: boolean): DrawnSeam {
  const at = cumulativeLength(points);
  const whole = at[at.length - 1];
  // one curve round a whole ring would have no direction to begin with
  const cuts = corners.length || !closed ? corners.map(({ u }) => u) : [whole / 3, (2 * whole) / 3];
  const ends = [...new Set([0, ...cuts, whole])];
  const nodes: SeamNode[] = [];
  for (let i = 1; i < ends.length; i++) {
    const part = fittedCurve(partOf(points, at, ends[i - 1], ends[i]), TRUE_TO);
    const joint = nodes.pop();
    nodes.push(joint ? { ...part[0], before: joint.before } : part[0], ...part.slice(1));
  }
  if (!closed) return { id, closed, nodes };
  const last = nodes.pop()!;
  return { id, closed, nodes: [{ ...nodes[0], before: last.before }, ...nodes.slice(1)] };
}
