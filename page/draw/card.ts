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
  const [x, y, across] = middleOf(points);
  const scale = canvas.width / across;
  const ctx = canvas.getContext('2d')!;
  ctx.setTransform(scale, 0, 0, scale, canvas.width / 2 - x * scale, canvas.height / 2 - y * scale);
  drawCloth(ctx, block);
  for (const thread of threads) drawThread(ctx, thread);
}

/** The middle of a line, and how much to show of it, mm. */
function middleOf(points: Float64Array): [number, number, number] {
  const half = 2 * Math.floor(points.length / 4);
  const [[left, right], [top, bottom]] = [0, 1].map((axis) => {
    const values = points.filter((_, i) => i % 2 === axis);
    return [Math.min(...values), Math.max(...values)];
  });
  const size = Math.max(right - left, (bottom - top) * 1.5) + 8;
  const isWhole = size <= MOST;
  const at = isWhole ? [(left + right) / 2, (top + bottom) / 2] : [points[half], points[half + 1]];
  return [at[0], at[1], Math.min(MOST, Math.max(LEAST, size))];
}
