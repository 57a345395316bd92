import { traceLine } from '../../src/draw/pen.js';
import type { DrawnBlock, DrawnThread } from '../core/messages.js';
import { canvasPen } from './canvas-pen.js';

/** A small picture shows thread broader than it is, px. */
const LEAST = 1.3;

/** The seams of a block, pale, and one color stop on them. */
export function drawStopPicture(
  canvas: HTMLCanvasElement,
  block: DrawnBlock,
  thread: DrawnThread | null,
  runs: readonly Float64Array[],
): void {
  const dots = devicePixelRatio || 1;
  const room = canvas.getBoundingClientRect();
  canvas.width = Math.round(room.width * dots);
  canvas.height = Math.round(room.height * dots);
  const scale = 0.94 * Math.min(canvas.width / block.width, canvas.height / block.height);
  const ctx = canvas.getContext('2d')!;
  ctx.lineJoin = 'round';
  const aside = (canvas.width - scale * block.width) / 2;
  ctx.setTransform(scale, 0, 0, scale, aside, (canvas.height - scale * block.height) / 2);
  ctx.fillStyle = '#e8e0d2';
  ctx.fillRect(0, 0, block.width, block.height);
  const seams = new Path2D();
  for (const { points } of block.seams) traceLine(canvasPen(seams), points);
  stroke(ctx, seams, '#b9ab97', dots / scale);
  const sewn = new Path2D();
  for (const run of runs) traceLine(canvasPen(sewn), run);
  if (thread) for (const run of runsOf(thread)) traceLine(canvasPen(sewn), run);
  const width = Math.max(thread?.width ?? 0, (LEAST * dots) / scale);
  if (thread) stroke(ctx, sewn, '#3a2d24', width + dots / scale);
  stroke(ctx, sewn, thread?.hex ?? '#7d2330', width);
}

function stroke(ctx: CanvasRenderingContext2D, path: Path2D, color: string, width: number): void {
  ctx.strokeStyle = color;
  ctx.lineWidth = width;
  ctx.stroke(path);
}

/** Every run of a thread as one line. */
function runsOf({ xy, cuts }: DrawnThread): Float64Array[] {
  const runs: Float64Array[] = [];
  for (let from = 0; from < cuts.length; ) {
    const end = cuts.indexOf(-1, from);
    runs.push(xy.subarray(2 * cuts[from], 2 * cuts[end - 1] + 2));
    from = end + 1;
  }
  return runs;
}
