import { computed, signal } from '@preact/signals';
import { isFitted, tableRoom, view } from './view.js';
import { picture } from './work.js';

const KEPT = 'seamwright dots to the millimeter';
/** What browsers take for an inch. */
const NOMINAL = 96 / 25.4;

/** Dots to the millimeter of this screen, which are the same however large the browser shows pages; null until it was measured. */
const dotsPerMm = signal<number | null>(Number(localStorage.getItem(KEPT)) || null);
const dots = (): number => devicePixelRatio || 1;
export const calibrated = computed(() => dotsPerMm.value !== null);
/** Whether the maker is measuring her screen. */
export const isMeasuring = signal(false);
/** Pixels of the page to the millimeter, as she sees it. */
export const guess = signal(NOMINAL);

/** The screen is measured, for the first time or anew: another one, or a card that was held badly. */
export function measureScreen(): void {
  guess.value = dotsPerMm.value === null ? NOMINAL : dotsPerMm.value / dots();
  isMeasuring.value = true;
}

/** The block as large as it is sewn; a screen that was not measured is measured first. */
export function toTrueSize(): void {
  if (dotsPerMm.value === null) {
    measureScreen();
    return;
  }
  const { width, height } = tableRoom.value;
  const block = picture.value?.block;
  if (!block) return;
  const scale = dotsPerMm.value / dots();
  isFitted.value = false;
  view.value = { scale, x: (width - block.width * scale) / 2, y: (height - block.height * scale) / 2 };
}

export function measured(scale: number): void {
  dotsPerMm.value = scale * dots();
  localStorage.setItem(KEPT, String(dotsPerMm.value));
  isMeasuring.value = false;
  toTrueSize();
}
