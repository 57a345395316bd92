import { signal } from '@preact/signals';
import type { Point } from '../../../src/geometry/point.js';
import type { Pixels } from '../../core/drawing-messages.js';
import { told } from '../work.js';
import { bare, chosenPatch } from './board.js';
import { readPhoto } from './read-photo.js';

/** A photo of fabrics, side by side as they may be, that colors are picked from. */
export interface FabricPhoto {
  readonly name: string;
  readonly image: ImageBitmap;
}

export const fabricPhoto = signal<FabricPhoto | null>(null);
/** Where on the photo it is looked at, in shares of its width and height. */
export const ring = signal<Point>([0.5, 0.5]);
/** How wide the ring is, as a share of the photo's shorter side. */
export const ringSize = signal(0.12);

/** So much of a fabric is taken to lie in the ring, mm: a pinch of it. Only prints look otherwise at another size. */
const RING_MM = 25;
/** The ring's piece is looked at in so many dots each way. */
const DOTS = 120;

export async function chooseFabricPhoto(file: File): Promise<void> {
  // browsers turn it as the camera was held
  fabricPhoto.value = { name: file.name, image: await readPhoto(file) };
  ring.value = [0.5, 0.5];
  chosenPatch.value ??= bare.value?.block.patches[0]?.id ?? null;
  told.value = `${file.name} is there: touch a fabric on it for the chosen patch`;
}

export function moveRing([x, y]: Point): void {
  ring.value = [Math.min(1, Math.max(0, x)), Math.min(1, Math.max(0, y))];
}

/** What lies in the ring, as the core looks at it. */
export function pieceAtRing({ image }: FabricPhoto): { pixels: Pixels; widthMm: number } {
  const wide = ringSize.value * Math.min(image.width, image.height);
  const [x, y] = [ring.value[0] * image.width, ring.value[1] * image.height];
  const ctx = new OffscreenCanvas(DOTS, DOTS).getContext('2d')!;
  ctx.arc(DOTS / 2, DOTS / 2, DOTS / 2, 0, 2 * Math.PI);
  ctx.clip();
  ctx.drawImage(image, x - wide / 2, y - wide / 2, wide, wide, 0, 0, DOTS, DOTS);
  const { data } = ctx.getImageData(0, 0, DOTS, DOTS);
  return { pixels: { width: DOTS, height: DOTS, data: new Uint8Array(data.buffer) }, widthMm: RING_MM };
}
