import { cumulativeLength } from '../../src/geometry/polyline.js';
import type { Line, Picture, Tried } from '../core/messages.js';
import { pointsOf } from '../state/lines-near.js';
import { drawCloth } from './cloth.js';
import { drawThread } from './thread.js';

/** A card shows so much of a long line, mm. */
const MOST = 64;
const LEAST = 30;

/** A line with an offer on it, on its own fabrics, around its middle. */
export function drawCard(
  canvas: HTMLCanvasElement,
  { block }: Picture,
  line: Line,
  { threads }: Tried,
): void {
  const points = pointsOf(block, line);
  if (!points) return;
  const dots = devicePixelRatio || 1;
  const room = canvas.getBoundingClientRect();
  canvas.width = Math.round(room.width * dots);
  canvas.height = Math.round(room.height * dots);
  const [x, y, across] = shownOf(points);
  const scale = canvas.width / across;
  const ctx = canvas.getContext('2d')!;
  ctx.setTransform(scale, 0, 0, scale, canvas.width / 2 - x * scale, canvas.height / 2 - y * scale);
  drawCloth(ctx, block);
  for (const thread of threads) drawThread(ctx, thread);
}

/** Which place of a line is shown, and how much around it, mm: its middle, or of a long ring the middle of its longest side. */
export function shownOf(points: Float64Array): [number, number, number] {
  const [[left, right], [top, bottom]] = [0, 1].map((axis) => {
    const values = points.filter((_, i) => i % 2 === axis);
    return [Math.min(...values), Math.max(...values)];
  });
  const size = Math.max(right - left, (bottom - top) * 1.5) + 8;
  if (size <= MOST) return [(left + right) / 2, (top + bottom) / 2, Math.max(LEAST, size)];
  const last = points.length - 2;
  const isRing = Math.hypot(points[0] - points[last], points[1] - points[last + 1]) < 1e-6;
  const [x, y] = isRing ? onLongest(points) : halfWay(points);
  return [x, y, MOST];
}

/** The middle of the longest side: half-way round a block is a corner of it. */
function onLongest(points: Float64Array): [number, number] {
  let [longest, x, y] = [-1, points[0], points[1]];
  for (let i = 2; i < points.length; i += 2) {
    const [ax, ay, bx, by] = points.subarray(i - 2, i + 2);
    const long = Math.hypot(bx - ax, by - ay);
    if (long > longest) [longest, x, y] = [long, (ax + bx) / 2, (ay + by) / 2];
  }
  return [x, y];
}

/** The place half-way along a line. */
function halfWay(points: Float64Array): [number, number] {
  const at = cumulativeLength(points);
  const half = at[at.length - 1] / 2;
  let i = 1;
  while (i < at.length - 1 && at[i] < half) i++;
  const t = (half - at[i - 1]) / (at[i] - at[i - 1] || 1);
  const between = (axis: number) => points[2 * i - 2 + axis] * (1 - t) + points[2 * i + axis] * t;
  return [between(0), between(1)];
}
