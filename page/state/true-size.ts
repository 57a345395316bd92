import { computed, signal } from '@preact/signals';
import { isFitted, tableRoom, view } from './view.js';
import { picture } from './work.js';

const KEPT = 'seamwright pixels to the millimeter';
/** What browsers take for an inch. */
const NOMINAL = 96 / 25.4;

/** Pixels of the page to the millimeter of this screen; null until it was measured. */
export const pixelsPerMm = signal<number | null>(Number(localStorage.getItem(KEPT)) || null);
export const calibrated = computed(() => pixelsPerMm.value !== null);
/** Whether the maker is measuring her screen. */
export const isMeasuring = signal(false);
export const guess = signal(pixelsPerMm.value ?? NOMINAL);

/** The block as large as it is sewn; a screen that was not measured is measured first. */
export function toTrueSize(): void {
  if (pixelsPerMm.value === null) {
    isMeasuring.value = true;
    return;
  }
  const { width, height } = tableRoom.value;
  const block = picture.value?.block;
  if (!block) return;
  const scale = pixelsPerMm.value;
  isFitted.value = false;
  view.value = { scale, x: (width - block.width * scale) / 2, y: (height - block.height * scale) / 2 };
}

export function measured(scale: number): void {
  pixelsPerMm.value = scale;
  localStorage.setItem(KEPT, String(scale));
  isMeasuring.value = false;
  toTrueSize();
}
