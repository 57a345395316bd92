import { effect, signal } from '@preact/signals';
import { touched } from './work.js';

/** The rest of what a seam can be told is looked at: it stays so from seam to seam, until none is touched. */
export const isMoreOpen = signal(false);

/** Parts of that which have handles on the seam while they are looked at. */
export type Leaf = 'rows' | 'accents' | 'guide' | 'way';

const openLeaves = signal<ReadonlySet<Leaf>>(new Set());

/** Whether a part's handles stand on the seam. */
export const isLookedAt = (leaf: Leaf): boolean => isMoreOpen.value && openLeaves.value.has(leaf);

/** For a part that is unfolded or folded. */
export const lookedAt = (leaf: Leaf) => (isOpen: boolean) => {
  const others = [...openLeaves.value].filter((one) => one !== leaf);
  openLeaves.value = new Set(isOpen ? [...others, leaf] : others);
};

effect(() => {
  if (touched.value === null) isMoreOpen.value = false;
  // the next seam's parts are folded at first
  openLeaves.value = new Set();
});
