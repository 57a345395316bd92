import { traceRing } from '../../../src/draw/pen.js';
import { unplacedPoint } from '../../../src/geometry/placement.js';
import { fromPoints, type Points, toPoints } from '../../../src/geometry/polyline.js';
import { canvasPen } from '../../draw/canvas-pen.js';
import { photo, photoImage } from './photo.js';

/** Dots across which a patch is looked at. */
const DOTS = 48;

/** The color that a patch has in the photo, in the mean: '#rrggbb'; null where the photo shows nothing of it. */
export function photoColor(rings: readonly Points[]): string | null {
  const [is, image] = [photo.value, photoImage.value];
  if (!is || !image) return null;
  const onPhoto = rings.map((ring) => fromPoints(toPoints(ring).map((p) => unplacedPoint(p, is.placement))));
  const [outer] = onPhoto;
  const side = (axis: number) => outer.filter((_, i) => i % 2 === axis);
  const [left, top] = [Math.min(...side(0)), Math.min(...side(1))];
  const scale = DOTS / Math.max(Math.max(...side(0)) - left, Math.max(...side(1)) - top, 1);
  const ctx = new OffscreenCanvas(DOTS, DOTS).getContext('2d')!;
  ctx.setTransform(scale, 0, 0, scale, -scale * left, -scale * top);
  const path = new Path2D();
  for (const ring of onPhoto) traceRing(canvasPen(path), ring);
  ctx.clip(path, 'evenodd');
  ctx.drawImage(image, 0, 0);
  return meanColor(ctx.getImageData(0, 0, DOTS, DOTS).data);
}

/** The mean of all that is not transparent. */
export function meanColor(data: ArrayLike<number>): string | null {
  const sums = [0, 0, 0];
  let count = 0;
  for (let i = 0; i < data.length; i += 4) {
    if (data[i + 3] < 250) continue;
    count++;
    for (let c = 0; c < 3; c++) sums[c] += data[i + c];
  }
  if (count === 0) return null;
  return `#${sums
    .map((sum) =>
      Math.round(sum / count)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}
