import type { DrawnSeam, SeamDrawing } from '../../../src/formats/seam-drawing.js';
import { distance, type Point } from '../../../src/geometry/point.js';
import { cumulativeLength } from '../../../src/geometry/polyline.js';
import { alongShare, footOn, pointsOfSeam } from '../../core/drawn-lines.js';
import { allLines, lineOf, withLine, withNodeAt } from './lines.js';

/** Ends that lie this near to a line are drawn on it, mm. */
const JOINED = 0.05;

/**
 * The drawing with one of its lines changed: ends of other lines that lay on it go along, as far along it as before, so
 * that seams that met still meet; and so do ends on those.
 */
export function withLineFollowed(drawing: SeamDrawing, changed: DrawnSeam): SeamDrawing {
  let now = withLine(drawing, changed);
  const done = new Set([changed.id]);
  for (const queue = [changed.id]; queue.length > 0; ) {
    const id = queue.shift()!;
    const [was, is] = [lineOf(drawing, id)!, lineOf(now, id)!];
    for (const other of allLines(now)) {
      if (done.has(other.id) || other.closed) continue;
      const followed = following(other, was, is);
      if (followed === other) continue;
      now = withLine(now, followed);
      done.add(other.id);
      queue.push(other.id);
    }
  }
  return now;
}

function following(line: DrawnSeam, was: DrawnSeam, is: DrawnSeam): DrawnSeam {
  const [before, after] = [pointsOfSeam(was), pointsOfSeam(is)];
  const last = line.nodes.length - 1;
  let now = line;
  for (const n of last === 0 ? [0] : [0, last]) {
    const { at } = line.nodes[n];
    const foot = footOn(before, at);
    if (foot.distance > JOINED) continue;
    const to = placeOn(was, is, at) ?? alongShare(after, foot.u / (cumulativeLength(before).at(-1) || 1));
    if (distance(at, to) > 1e-9) now = withNodeAt(now, n, to);
  }
  return now;
}

/** Ends that met at a node go exactly where the node goes. */
function placeOn(was: DrawnSeam, is: DrawnSeam, at: Point): Point | null {
  if (was.nodes.length !== is.nodes.length) return null;
  const n = was.nodes.findIndex((node) => distance(node.at, at) <= JOINED);
  return n < 0 ? null : is.nodes[n].at;
}
