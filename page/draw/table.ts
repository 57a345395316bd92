import { traceLine, traceRing } from '../../src/draw/pen.js';
import type { Line, Picture } from '../core/messages.js';
import { pointsOf } from '../state/lines-near.js';
import type { View } from '../state/view.js';
import { canvasPen, type Drawing } from './canvas-pen.js';
import { drawCloth } from './cloth.js';
import type { Layers } from './layers.js';
import { drawThread } from './thread.js';

export interface OnTable {
  readonly picture: Picture;
  readonly view: View;
  readonly touched: Line | null;
  readonly hidden: readonly string[];
  /** so many of the stops are sewn; all where it is null */
  readonly sewnTo: number | null;
  /** what is measured, instead of the thread as it lies */
  readonly look: LookImage | null;
  readonly layers: Layers;
}

type LookImage = { readonly image: HTMLImageElement } & Record<'left' | 'top' | 'width' | 'height', number>;

/** Draws all that lies on the table. @param dots of the screen to a pixel of the page */
export function drawTable(ctx: CanvasRenderingContext2D, dots: number, on: OnTable): void {
  const { picture, view } = on;
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  ctx.clearRect(0, 0, ctx.canvas.width, ctx.canvas.height);
  ctx.setTransform(dots * view.scale, 0, 0, dots * view.scale, dots * view.x, dots * view.y);
  if (on.look) drawLook(ctx, on.look);
  else drawBlock(ctx, dots, on);
  drawKeptClear(ctx, picture, view.scale);
  if (on.touched !== null) drawTouched(ctx, picture, on.touched, view.scale);
}

function drawLook(ctx: CanvasRenderingContext2D, { image, left, top, width, height }: LookImage): void {
  ctx.drawImage(image, left, top, width, height);
}

/** Cloth, thread in the order sewn, and what is put on by hand when all is sewn. */
function drawBlock(ctx: CanvasRenderingContext2D, dots: number, on: OnTable): void {
  const { picture, view, hidden, sewnTo } = on;
  const stops = picture.stops.slice(0, sewnTo ?? undefined).filter(({ title }) => !hidden.includes(title));
  on.layers.draw(ctx, JSON.stringify([view, dots, picture.block.name]), [
    { key: clothKey(picture), draw: (to) => drawGround(to, dots, picture) },
    ...stops.map((stop) => ({ key: stop.key, draw: (to: Drawing) => drawThread(to, stop) })),
  ]);
  if (sewnTo === null) for (const { at, radius } of picture.marks) drawMark(ctx, at, radius);
}

/** Tells one block's cloth from another's. */
const clothKey = ({ block }: Picture): string =>
  `${block.seams.length} ${block.width} ${block.height} ${block.patches.map(({ fill }) => fill)}`;

/** The block's cloth on the table, with its shadow. */
function drawGround(ctx: Drawing, dots: number, picture: Picture): void {
  ctx.save();
  ctx.shadowColor = 'rgba(40, 25, 10, 0.35)';
  ctx.shadowBlur = 14 * dots;
  ctx.shadowOffsetY = 4 * dots;
  ctx.fillStyle = '#d8cfc0';
  ctx.fill(outlinePath(picture));
  ctx.restore();
  drawCloth(ctx, picture.block);
}

function outlinePath({ block: { outline, width, height } }: Picture): Path2D {
  const path = new Path2D();
  if (outline) traceLine(canvasPen(path), outline);
  else path.rect(0, 0, width, height);
  return path;
}

/** A bead or the like, put on by hand afterwards. */
function drawMark(ctx: CanvasRenderingContext2D, [x, y]: readonly [number, number], radius: number): void {
  const path = new Path2D();
  path.arc(x, y, radius, 0, 2 * Math.PI);
  ctx.fillStyle = '#e9f1f4';
  ctx.strokeStyle = '#4c5b66';
  ctx.lineWidth = 0.25;
  ctx.fill(path);
  ctx.stroke(path);
}

/** The touched line stands out by a light band with dark rims, whatever the cloth. */
function drawTouched(ctx: CanvasRenderingContext2D, { block }: Picture, line: Line, scale: number): void {
  const points = pointsOf(block, line);
  if (!points) return;
  const path = new Path2D();
  traceLine(canvasPen(path), points);
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  for (const [width, color] of [
    [4.5, 'rgba(20, 30, 50, 0.75)'],
    [2.5, '#fff8e6'],
  ] as const) {
    ctx.setLineDash([9 / scale, 8 / scale]);
    ctx.lineWidth = width / scale;
    ctx.strokeStyle = color;
    ctx.stroke(path);
  }
  ctx.setLineDash([]);
  const ends = [points.subarray(0, 2), points.subarray(-2)];
  for (const [x, y] of ends) {
    const dot = new Path2D();
    dot.arc(x, y, 5 / scale, 0, 2 * Math.PI);
    ctx.fillStyle = '#fff8e6';
    ctx.lineWidth = 2 / scale;
    ctx.strokeStyle = 'rgba(20, 30, 50, 0.85)';
    ctx.fill(dot);
    ctx.stroke(dot);
  }
}

/** Where nothing new is sewn: a dashed rim. */
function drawKeptClear(ctx: CanvasRenderingContext2D, { keptClear }: Picture, scale: number): void {
  const path = new Path2D();
  for (const { rings } of keptClear) for (const ring of rings) traceRing(canvasPen(path), ring);
  ctx.setLineDash([6 / scale, 5 / scale]);
  for (const [width, color] of [
    [4, 'rgba(20, 30, 50, 0.7)'],
    [2, '#fff8e6'],
  ] as const) {
    ctx.lineWidth = width / scale;
    ctx.strokeStyle = color;
    ctx.stroke(path);
  }
  ctx.setLineDash([]);
}
