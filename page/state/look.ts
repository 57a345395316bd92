import { effect, signal } from '@preact/signals';
import type { Finding } from '../../src/finding.js';
import type { Looked } from '../core/messages.js';
import { askAbout } from './core-call.js';
import { unit } from './units.js';
import { picture, work } from './work.js';

/** What is looked at: the thread as it lies, or what is measured of it. */
export const looked = signal<Looked | 'thread'>('thread');
/** The picture of what is measured, where its corner lies on the block, and how large it is, mm. */
export const lookImage = signal<{
  readonly image: HTMLImageElement;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
} | null>(null);
/** All that is worth a look, worst first. */
export const findings = signal<readonly Finding[]>([]);
/** So many of the new stops are sewn; all where it is null. */
export const sewnTo = signal<number | null>(null);

/** CSS pixels to the millimeter. */
const PX = 96 / 25.4;
/** The block is looked over when nothing was changed for so long, ms. */
const QUIET = 500;

/** Keeps what is looked at and the findings as the work is. */
export function keepLooking(): void {
  effect(() => {
    const [now, shown, as] = [picture.value && work.peek(), looked.value, unit.value];
    if (!now || shown === 'thread') {
      lookImage.value = null;
      return;
    }
    void askAbout(now.file, 'look', { dressing: now.dressing, shown, unit: as }).then(
      async ({ svg, left, top }) => {
        const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
        const image = new Image();
        image.src = url;
        await image.decode();
        if (looked.value !== shown || unit.value !== as) return;
        lookImage.value = { image, left, top, width: image.width / PX, height: image.height / PX };
      },
    );
  });
  // a picture's address is good as long as it is shown
  let shownAt: string | undefined;
  effect(() => {
    const address = lookImage.value?.image.src;
    if (shownAt && shownAt !== address) URL.revokeObjectURL(shownAt);
    shownAt = address;
  });
  let waiting = 0;
  effect(() => {
    const now = picture.value && work.peek();
    clearTimeout(waiting);
    if (!now) return;
    waiting = window.setTimeout(async () => {
      findings.value = await askAbout(now.file, 'examine', {
        dressing: now.dressing,
      }).catch(() => []);
    }, QUIET);
  });
}
