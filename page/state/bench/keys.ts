import { isBenchOpen, redoStitch, undoStitch } from './on-bench.js';

/** Steps back and forth on the bench. @returns whether the key was meant for it */
export function benchKey(event: KeyboardEvent): boolean {
  if (!isBenchOpen.value) return false;
  if (!(event.ctrlKey || event.metaKey)) return true;
  const key = event.key.toLowerCase();
  if (key === 'y' || (key === 'z' && event.shiftKey)) redoStitch();
  else if (key === 'z') undoStitch();
  else return true;
  event.preventDefault();
  return true;
}
