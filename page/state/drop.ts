import { signal } from '@preact/signals';
import { openFiles } from './actions.js';
import { takeInStitches } from './bench/library.js';
import { isBenchOpen } from './bench/on-bench.js';
import { givenFiles } from './given-files.js';

/** A file is being held over the page. */
export const isOver = signal(false);

/** Files can be dropped anywhere. */
export function listenToDrops(): void {
  addEventListener('dragover', (event) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    isOver.value = true;
  });
  addEventListener('dragleave', ({ relatedTarget }) => {
    if (relatedTarget === null) isOver.value = false;
  });
  addEventListener('drop', async (event) => {
    isOver.value = false;
    if (!event.dataTransfer?.files.length) return;
    event.preventDefault();
    const files = await givenFiles(event.dataTransfer.files);
    await (isBenchOpen.value ? takeInStitches(files) : openFiles(files));
  });
}
