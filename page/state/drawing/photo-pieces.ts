import { traceRing } from '../../../src/draw/pen.js';
import { boxOf } from '../../../src/geometry/box.js';
import { unplacedPoint } from '../../../src/geometry/placement.js';
import { fromPoints, type Points, toPoints } from '../../../src/geometry/polyline.js';
import type { Pixels } from '../../core/drawing-messages.js';
import { canvasPen } from '../../draw/canvas-pen.js';
import { photo, photoImage } from './photo.js';

/** Dots across which a patch is looked at. */
const DOTS = 160;
/** Seams lie in shadow, and threads on them: so near to its rim a patch is not looked at, as a share of how wide it is. */
const RIM = 0.06;

/** What the photo behind the drawing shows of a patch, turned as the photo is; null where there is none. */
export function pieceOfPatch(rings: readonly Points[]): { pixels: Pixels; widthMm: number } | null {
  const [is, image] = [photo.value, photoImage.value];
  if (!is || !image) return null;
  const onPhoto = rings.map((ring) => fromPoints(toPoints(ring).map((p) => unplacedPoint(p, is.placement))));
  const { left, top, right, bottom } = boxOf(onPhoto.slice(0, 1));
  const side = Math.max(right - left, bottom - top, 1);
  const scale = DOTS / side;
  const ctx = new OffscreenCanvas(DOTS, DOTS).getContext('2d')!;
  ctx.setTransform(scale, 0, 0, scale, -scale * left, -scale * top);
  const path = new Path2D();
  for (const ring of onPhoto) traceRing(canvasPen(path), ring);
  ctx.save();
  ctx.clip(path, 'evenodd');
  ctx.drawImage(image, 0, 0);
  ctx.restore();
  ctx.globalCompositeOperation = 'destination-out';
  ctx.lineWidth = 2 * RIM * side;
  ctx.stroke(path);
  const { data } = ctx.getImageData(0, 0, DOTS, DOTS);
  return {
    pixels: { width: DOTS, height: DOTS, data: new Uint8Array(data.buffer) },
    widthMm: side * is.placement.scale,
  };
}
