import type { Benched } from '../core/bench-messages.js';
import { drawCloth } from './cloth.js';
import { drawThread } from './thread.js';

/** Sample seams with a stitch on them, as large as the canvas lets them be. */
export function drawSamples(
  canvas: HTMLCanvasElement,
  { block, threads }: NonNullable<Benched['samples']>,
): void {
  const dots = devicePixelRatio || 1;
  const room = canvas.getBoundingClientRect();
  const [width, height] = [Math.round(room.width * dots), Math.round(room.height * dots)];
  if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
  const scale = Math.min(width / block.width, height / block.height);
  const ctx = canvas.getContext('2d')!;
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  ctx.clearRect(0, 0, width, height);
  ctx.translate((width - scale * block.width) / 2, (height - scale * block.height) / 2);
  ctx.scale(scale, scale);
  drawCloth(ctx, block);
  for (const thread of threads) drawThread(ctx, thread);
}
