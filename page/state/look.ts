import { computed, effect, signal } from '@preact/signals';
import type { Finding } from '../../src/finding.js';
import type { Look, Looked } from '../core/messages.js';
import { askAbout } from './core-call.js';
import { unit } from './units.js';
import { view } from './view.js';
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
  readonly told: Look['told'];
} | null>(null);
/** All that is worth a look, worst first. */
export const findings = signal<readonly Finding[]>([]);
/** So many of the new stops are sewn; all where it is null. */
export const sewnTo = signal<number | null>(null);

/** CSS pixels to the millimeter. */
const PX = 96 / 25.4;
/** Numbers on the table are as high as is read at arm's length, px; never larger than this on the cloth, mm. */
const READ = 11;
const LARGEST = 8;
/** The same on the cloth, mm, in steps: what is looked at is drawn anew only where the block lies much nearer or further. */
const least = computed(() => Math.min(LARGEST, 2 ** (Math.ceil(2 * Math.log2(READ / view.value.scale)) / 2)));
/** The block is looked over when nothing was changed for so long, ms. */
const QUIET = 500;

/** Keeps what is looked at and the findings as the work is. */
export function keepLooking(): void {
  effect(() => {
    const [now, shown, as] = [picture.value && work.peek(), looked.value, unit.value];
    const high = shown === 'thread' ? 0 : least.value;
    if (!now || shown === 'thread') {
      lookImage.value = null;
      return;
    }
    void askAbout(now.file, 'look', { dressing: now.dressing, shown, unit: as, least: high }).then(
      async ({ svg, left, top, told }) => {
        const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
        const image = new Image();
        image.src = url;
        await image.decode();
        if (looked.value !== shown || unit.value !== as || least.value !== high) return;
        lookImage.value = { image, left, top, width: image.width / PX, height: image.height / PX, told };
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
