import { traceLine, traceRing } from '../../src/draw/pen.js';
import { type Box, boxOf } from '../../src/geometry/box.js';
import type { Points } from '../../src/geometry/polyline.js';
import type { DrawnBlock, DrawnThread, Line, Picture } from '../core/messages.js';
import { pointsOf } from '../state/lines-near.js';
import { BEAD_SHADOW, drawBead, lyingRibbon } from './by-hand.js';
import { canvasPen, type Drawing } from './canvas-pen.js';
import { drawCloth } from './cloth.js';
import type { Lying } from './sheet.js';
import { drawThread, threadBoxes } from './thread.js';

export interface OnTable extends Pick<Picture, 'block' | 'keptClear' | 'laid' | 'marks'> {
  /** thread in the order sewn, as far as it is shown */
  readonly threads: readonly DrawnThread[];
  readonly touched: Line | null;
  /** what is measured is shown instead of the thread as it lies */
  readonly isLook: boolean;
}

const EVERYWHERE: Box = { left: -Infinity, top: -Infinity, right: Infinity, bottom: Infinity };

/**
 * All that lies on the table, from below: the cloth, thread in the order sewn, what is put on by hand when all is sewn, and
 * what is touched or kept clear.
 *
 * @param dots of the screen to a pixel of the page
 * @param scale pixels of the page to the millimeter
 */
export function lyingOn(on: OnTable, dots: number, scale: number): Lying[] {
  const { block, threads, marks, laid, keptClear, touched } = on;
  const ground: Lying = on.isLook
    ? { key: 'nothing', boxes: () => [EVERYWHERE], draw: () => {} }
    : { key: block.key, boxes: () => [EVERYWHERE], draw: (ctx) => drawGround(ctx, dots, block) };
  const sewn = on.isLook
    ? []
    : [
        ...threads.flatMap((thread): Lying[] => [
          {
            key: thread.key,
            boxes: () => threadBoxes(thread),
            draw: (ctx, within) => drawThread(ctx, thread, within),
          },
          ...laid.filter((ribbon) => ribbon.on === thread.key).map(lyingRibbon),
        ]),
        ...marks.map(
          ({ at: [x, y], radius }): Lying => ({
            key: `mark ${x} ${y} ${radius}`,
            boxes: () => [grown({ left: x, right: x, top: y, bottom: y }, (1 + BEAD_SHADOW) * radius)],
            draw: (ctx) => drawBead(ctx, [x, y], radius),
          }),
        ),
      ];
  const clear = keptClear.map(
    ({ rings }): Lying => ({
      key: `clear ${rings.map((ring) => ring.join())}`,
      boxes: () => [grown(boxOf(rings), BAND / scale)],
      draw: (ctx) => drawKeptClear(ctx, rings, scale),
    }),
  );
  const points = touched === null ? null : pointsOf(block, touched);
  const line: Lying[] = points
    ? [
        {
          key: `touched ${touched} ${block.key}`,
          boxes: () => [grown(boxOf([points]), BAND / scale)],
          draw: (ctx) => drawTouched(ctx, points, scale),
        },
      ]
    : [];
  return [ground, ...sewn, ...clear, ...line];
}

/** What is marked on the table reaches so far beyond its line, px. */
const BAND = 8;

const grown = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

/** The block's cloth on the table, with its shadow. */
function drawGround(ctx: Drawing, dots: number, block: DrawnBlock): void {
  ctx.save();
  ctx.shadowColor = 'rgba(40, 25, 10, 0.35)';
  ctx.shadowBlur = 14 * dots;
  ctx.shadowOffsetY = 4 * dots;
  ctx.fillStyle = '#d8cfc0';
  ctx.fill(outlinePath(block));
  ctx.restore();
  drawCloth(ctx, block);
}

function outlinePath({ outline, width, height }: DrawnBlock): Path2D {
  const path = new Path2D();
  if (outline) traceLine(canvasPen(path), outline);
  else path.rect(0, 0, width, height);
  return path;
}

/** The touched line stands out by a light band with dark rims, whatever the cloth. */
function drawTouched(ctx: Drawing, points: Points, scale: number): void {
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
function drawKeptClear(ctx: Drawing, rings: readonly Points[], scale: number): void {
  const path = new Path2D();
  for (const ring of rings) traceRing(canvasPen(path), ring);
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
