import { effect } from '@preact/signals';
import { keysOf, withNews } from '../core/news.js';
import { askAbout, Refused } from './core-call.js';
import { keepPicture } from './keep-picture.js';
import { complaint, picture, pictured, type Work, work } from './work.js';

/**
 * Dresses the block anew whenever the work changes. While the core is at it only the latest change waits: dragging asks
 * for as many pictures as can be made, and the last one is always the right one.
 */
export function keepDressed(): void {
  let next: Work | null = null;
  let isAtIt = false;

  const dressNext = async () => {
    isAtIt = true;
    while (next) {
      const now: Work = next;
      const { dressing, file } = now;
      next = null;
      try {
        const before = picture.value;
        const has = before ? keysOf(before) : [];
        picture.value = withNews(before, await askAbout(file, 'redress', { dressing, has }));
        keepPicture(now, picture.value);
      } catch (error) {
        if (!(error instanceof Refused)) throw error;
        complaint.value = error.complaint;
      }
      pictured.value = now;
    }
    isAtIt = false;
  };

  effect(() => {
    next = work.value;
    if (next && !isAtIt) void dressNext();
  });
}
