import { traceLine, traceRing } from '../../src/draw/pen.js';
import { OUTLINE, type SeamDrawing } from '../../src/formats/seam-drawing.js';
import { type Placement, placedPoint, turnOf } from '../../src/geometry/placement.js';
import type { Point } from '../../src/geometry/point.js';
import { pointsOfSeam } from '../core/drawn-lines.js';
import type { DrawnBlock, DrawnStop } from '../core/messages.js';
import { allLines } from '../state/drawing/lines.js';
import type { Snapped } from '../state/drawing/snap.js';
import type { View } from '../state/view.js';
import { canvasPen } from './canvas-pen.js';
import { drawCloth } from './cloth.js';
import type { Lying, LyingPictures } from './lying-pictures.js';
import { drawThread, threadBoxes } from './thread.js';

export interface OnBoard {
  readonly block: DrawnBlock;
  readonly drawing: SeamDrawing;
  readonly view: View;
  readonly chosenLine: number | null;
  readonly chosenPatch: number | null;
  /** the line that is being drawn, up to where it would go next */
  readonly begun: readonly Point[];
  readonly aim: Snapped | null;
  /** what is sewn on it, and how the block that it is sewn on lies there; null where it is not shown */
  readonly thread: {
    readonly stops: readonly DrawnStop[];
    readonly placement: Placement;
    readonly pictures: LyingPictures;
  } | null;
  readonly photo: {
    readonly image: ImageBitmap;
    readonly placement: Placement;
    readonly strength: number;
    readonly marks: readonly Point[];
  } | null;
}

const DARK = 'rgba(20, 30, 50, 0.85)';
const LIGHT = '#fff8e6';

/** So much of a frame is for drawing thread anew, ms. */
const TIME = 2;

/**
 * The cloth, the photo on it, what is sewn, and the lines over all.
 * @param dots of the screen to a pixel of the page
 * @returns whether all of it is as it is now; else there was no time to draw all thread anew, and it is to be called again
 */
export function drawBoard(ctx: CanvasRenderingContext2D, dots: number, on: OnBoard): boolean {
  const { view, block, drawing } = on;
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  ctx.clearRect(0, 0, ctx.canvas.width, ctx.canvas.height);
  ctx.setTransform(dots * view.scale, 0, 0, dots * view.scale, dots * view.x, dots * view.y);
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  drawCloth(ctx, block);
  if (on.photo) drawPhoto(ctx, on.photo);
  const isDone = !on.thread || drawSewn(ctx, on.thread);
  const px = 1 / view.scale;
  if (on.chosenPatch !== null) drawPatch(ctx, block, on.chosenPatch, px);
  for (const line of allLines(drawing)) {
    const path = new Path2D();
    traceLine(canvasPen(path), pointsOfSeam(line));
    const isChosen = line.id === on.chosenLine;
    const width = line.id === OUTLINE ? 3 : 2.2;
    stroke(ctx, path, LIGHT, (isChosen ? width + 6 : width + 2.4) * px);
    stroke(ctx, path, isChosen ? '#8c2f3f' : DARK, (isChosen ? width + 1 : width) * px);
  }
  for (const line of drawing.lines) {
    if (line.closed) continue;
    for (const { at } of [line.nodes[0], line.nodes[line.nodes.length - 1]]) dot(ctx, at, 3 * px, DARK, px);
  }
  if (on.begun.length > 0) drawBegun(ctx, on.begun, px);
  if (on.aim) drawAim(ctx, on.aim, px);
  if (on.photo) for (const mark of on.photo.marks) drawMark(ctx, placedPoint(mark, on.photo.placement), px);
  return isDone;
}

function drawPhoto(
  ctx: CanvasRenderingContext2D,
  { image, placement, strength }: NonNullable<OnBoard['photo']>,
): void {
  const [cos, sin] = turnOf(placement.turn);
  const { scale, shift } = placement;
  ctx.save();
  ctx.globalAlpha = strength;
  ctx.transform(scale * cos, -scale * sin, scale * sin, scale * cos, shift[0], shift[1]);
  ctx.drawImage(image, 0, 0);
  ctx.restore();
}

/** Thread lies on the block as it is sewn, which may be larger than drawn, and turned. */
function drawSewn(
  ctx: CanvasRenderingContext2D,
  { stops, placement, pictures }: NonNullable<OnBoard['thread']>,
): boolean {
  const { scale, turn, shift } = placement;
  const [cos, sin] = turnOf(turn);
  const until = performance.now() + TIME;
  ctx.save();
  ctx.transform(cos / scale, sin / scale, -sin / scale, cos / scale, 0, 0);
  ctx.translate(-shift[0], -shift[1]);
  const isDone = pictures.draw(ctx, stops.map(lying), () => performance.now() < until);
  ctx.restore();
  return isDone;
}

/** Stops of one title, as of several petals, are told apart by their places. */
const lying = (stop: DrawnStop, k: number, all: readonly DrawnStop[]): Lying => ({
  name: `${stop.title} ${all.slice(0, k).filter(({ title }) => title === stop.title).length}`,
  key: stop.key,
  box: () => {
    const boxes = threadBoxes(stop);
    return {
      left: Math.min(...boxes.map(({ left }) => left)),
      top: Math.min(...boxes.map(({ top }) => top)),
      right: Math.max(...boxes.map(({ right }) => right)),
      bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
    };
  },
  draw: (to) => drawThread(to, stop),
});

function drawPatch(ctx: CanvasRenderingContext2D, { patches }: DrawnBlock, chosen: number, px: number): void {
  const path = new Path2D();
  for (const ring of patches.find(({ id }) => id === chosen)?.rings ?? []) traceRing(canvasPen(path), ring);
  ctx.save();
  ctx.clip(path, 'evenodd');
  stroke(ctx, path, DARK, 16 * px);
  ctx.setLineDash([9 * px, 8 * px]);
  stroke(ctx, path, LIGHT, 10 * px);
  ctx.restore();
}

/** What is begun, dashed: it is no seam yet. */
function drawBegun(ctx: CanvasRenderingContext2D, begun: readonly Point[], px: number): void {
  const path = new Path2D();
  begun.forEach(([x, y], i) => void (i === 0 ? path.moveTo(x, y) : path.lineTo(x, y)));
  stroke(ctx, path, DARK, 5 * px);
  ctx.setLineDash([8 * px, 7 * px]);
  stroke(ctx, path, LIGHT, 3 * px);
  ctx.setLineDash([]);
  for (const at of [begun[0], begun[begun.length - 1]]) dot(ctx, at, 5 * px, '#8c2f3f', px);
}

/** Where the next place would be: a ring that closes round what it has caught. */
function drawAim(ctx: CanvasRenderingContext2D, { at, on }: Snapped, px: number): void {
  const ring = new Path2D();
  ring.arc(at[0], at[1], (on ? 10 : 5) * px, 0, 2 * Math.PI);
  stroke(ctx, ring, LIGHT, 4.5 * px);
  stroke(ctx, ring, on ? '#8c2f3f' : DARK, 2.2 * px);
  if (on === 'point') dot(ctx, at, 3.5 * px, '#8c2f3f', px);
}

function drawMark(ctx: CanvasRenderingContext2D, [x, y]: Point, px: number): void {
  const cross = new Path2D();
  for (const [dx, dy] of [
    [14, 0],
    [0, 14],
  ]) {
    cross.moveTo(x - dx * px, y - dy * px);
    cross.lineTo(x + dx * px, y + dy * px);
  }
  stroke(ctx, cross, LIGHT, 5 * px);
  stroke(ctx, cross, '#8c2f3f', 2 * px);
}

function dot(ctx: CanvasRenderingContext2D, [x, y]: Point, radius: number, color: string, px: number): void {
  const path = new Path2D();
  path.arc(x, y, radius, 0, 2 * Math.PI);
  ctx.fillStyle = color;
  ctx.fill(path);
  stroke(ctx, path, LIGHT, 1.4 * px);
}

function stroke(ctx: CanvasRenderingContext2D, path: Path2D, color: string, width: number): void {
  ctx.strokeStyle = color;
  ctx.lineWidth = width;
  ctx.stroke(path);
}
