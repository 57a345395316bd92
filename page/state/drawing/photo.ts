import { batch, computed, effect, signal } from '@preact/signals';
import { type Placement, unplacedPoint } from '../../../src/geometry/placement.js';
import { distance, type Point } from '../../../src/geometry/point.js';
import { become } from '../actions.js';
import { told, work } from '../work.js';
import { bare } from './board.js';
import { scaledBy, turnedAbout } from './photo-placement.js';
import { readPhoto } from './read-photo.js';

/** A photo that lies behind the drawing, and how it lies there. */
export interface Photo {
  readonly name: string;
  readonly picture: Blob;
  /** px */
  readonly width: number;
  readonly height: number;
  /** from its pixels to the block's mm */
  readonly placement: Placement;
}

export const photo = computed(() => work.value?.photo ?? null);
export const photoImage = signal<ImageBitmap | null>(null);
/** How plainly it is seen, from 0 to 1. */
export const strength = signal(0.85);
/** Points of the photo that lie a known way apart, in its pixels. */
export const marks = signal<readonly Point[]>([]);

/** No photo is kept larger, px: a block of 30 cm is then seen to 0.12 mm. */
const LARGEST = 2400;

export async function layPhoto(file: File): Promise<void> {
  const now = work.value;
  const block = bare.value?.block;
  if (!now || !block) return;
  // browsers turn it as the camera was held
  const full = await readPhoto(file);
  const size = Math.min(1, LARGEST / Math.max(full.width, full.height));
  const [width, height] = [Math.round(full.width * size), Math.round(full.height * size)];
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext('2d')!.drawImage(full, 0, 0, width, height);
  const picture = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.88 });
  const scale = Math.max(block.width / width, block.height / height);
  const shift: Point = [(block.width - scale * width) / 2, (block.height - scale * height) / 2];
  marks.value = [];
  become({
    ...now,
    photo: { name: file.name, picture, width, height, placement: { scale, turn: 0, shift } },
  });
  told.value = `${file.name} lies behind the drawing. Touch two points on it that you know the distance of`;
}

export function takePhotoAway(): void {
  if (!work.value) return;
  const { photo: _, ...rest } = work.value;
  marks.value = [];
  become(rest);
}

/** @param grip changes that follow each other by the same grip are undone together */
function place(placement: Placement, grip: string | null): void {
  const [now, is] = [work.value, photo.value];
  if (now && is) become({ ...now, photo: { ...is, placement } }, grip);
}

export function movePhoto(dx: number, dy: number): void {
  const was = photo.value?.placement;
  if (was) place({ ...was, shift: [was.shift[0] + dx, was.shift[1] + dy] }, 'photo');
}

/** Turned about the middle of the block, degrees counterclockwise. */
export function turnPhoto(turn: number): void {
  const [was, block] = [photo.value?.placement, bare.value?.block];
  if (was && block) place(turnedAbout(was, turn, [block.width / 2, block.height / 2]), 'photo turn');
}

/** A touch on the photo: the first of two points, the second, and then anew. */
export function markPhoto(at: Point): void {
  const is = photo.value;
  if (!is) return;
  const mark = unplacedPoint(at, is.placement);
  marks.value = marks.value.length === 2 ? [mark] : [...marks.value, mark];
  told.value =
    marks.value.length === 1 ? 'One point marked' : 'Two points marked; say how far apart they are';
}

/** How far apart the two points are as the photo lies now, mm; null without two. */
export const markedMm = computed(() => {
  const [a, b] = marks.value;
  return a && b && photo.value ? distance(a, b) * photo.value.placement.scale : null;
});

/** The two points are so far apart, mm: the photo is made as large as that, and the first point stays. */
export function scalePhoto(mm: number): void {
  const [a, b] = marks.value;
  const is = photo.value;
  if (!is || !a || !b || !(mm > 0)) return;
  batch(() => {
    place(scaledBy(is.placement, a, b, mm), null);
    marks.value = [];
  });
  told.value = 'The photo is as large as the block';
}

/** Keeps the picture of the photo ready to be drawn. */
export function keepPhoto(): void {
  let shown: Blob | null = null;
  effect(() => {
    const picture = photo.value?.picture ?? null;
    if (picture === shown) return;
    shown = picture;
    if (!picture) photoImage.value = null;
    else
      void createImageBitmap(picture).then((image) => {
        if (shown === picture) photoImage.value = image;
      });
  });
}
