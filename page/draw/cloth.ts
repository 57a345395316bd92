import { traceLine, traceRing } from '../../src/draw/pen.js';
import { mutedCloth } from '../../src/draw/shade.js';
import type { DrawnBlock } from '../core/messages.js';
import { canvasPen, type Drawing } from './canvas-pen.js';

/** The seams fold the cloth: shades that run out to both sides, [width in mm, strength]. */
const FOLDS = [
  [1.8, 0.05],
  [0.8, 0.08],
  [0.15, 0.4],
] as const;

/** Patches in their fabrics, seams as folds, and a faint trace of what is sewn already; the unit is the millimeter. */
export function drawCloth(ctx: Drawing, block: DrawnBlock): void {
  if (block.patches.length === 0) {
    ctx.fillStyle = mutedCloth(0);
    ctx.fillRect(0, 0, block.width, block.height);
  }
  for (const { fill, rings } of block.patches) {
    const path = new Path2D();
    for (const ring of rings) traceRing(canvasPen(path), ring);
    ctx.fillStyle = fill;
    ctx.fill(path, 'evenodd');
  }
  const folds = new Path2D();
  for (const { points } of block.seams) traceLine(canvasPen(folds), points);
  ctx.lineJoin = 'round';
  ctx.strokeStyle = '#1b1410';
  for (const [width, strength] of FOLDS) {
    ctx.globalAlpha = strength;
    ctx.lineWidth = width;
    ctx.stroke(folds);
  }
  const sewn = new Path2D();
  for (const { runs } of block.existing) for (const run of runs) traceLine(canvasPen(sewn), run);
  ctx.globalAlpha = 0.35;
  ctx.strokeStyle = '#6d665e';
  ctx.lineWidth = 0.25;
  ctx.stroke(sewn);
  ctx.globalAlpha = 1;
}
