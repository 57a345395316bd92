import { effect, signal } from '@preact/signals';
import { touched } from './work.js';

/** The rest of what a seam can be told is looked at: it stays so from seam to seam, until none is touched. */
export const isMoreOpen = signal(false);

effect(() => {
  if (touched.value === null) isMoreOpen.value = false;
});
