import { signal } from '@preact/signals';
import type { DrawnBlock, DrawnThread } from '../core/messages.js';
import address from '../draw/painter.ts?worker&url';
import type { ToPaint } from '../draw/painting.js';
import { addressOf } from './core-worker.js';

/** All that is on the table, and how large it is shown. */
export interface Scene extends Omit<ToPaint, 'block' | 'order' | 'threads' | 'isFresh'> {
  readonly block: DrawnBlock;
  readonly threads: readonly DrawnThread[];
}

const worker = startPainter();
let show: (painted: ImageBitmap, scene: Scene) => void = () => {};
let next: Scene | null = null;
let painting: Scene | null = null;
let isFresh = true;
let sent: { readonly block: string; readonly threads: ReadonlySet<string> } = {
  block: '',
  threads: new Set(),
};

worker.onmessage = ({ data }: MessageEvent<ImageBitmap | null>) => {
  const scene = painting!;
  painting = null;
  if (data) {
    show(data, scene);
    if (!isShown) whenOver(tellShown);
    isShown = true;
  }
  send();
  isPainting.value = painting !== null;
};

/** Whether the table is another by now than the last painting of it. */
export const isPainting = signal(false);

/** Paintings are shown like this from now on. */
export function showPaintings(how: (painted: ImageBitmap, scene: Scene) => void): void {
  show = how;
  isFresh = true;
}

/** The first picture is waited for no longer than this: a tab that nobody looks at shows none. ms */
const LONGEST = 1000;

let isShown = false;
let tellShown: () => void;
/** When the first picture is on the screen, and the page has time for other things. */
export const firstShown = new Promise<void>((resolve) => {
  setTimeout(resolve, LONGEST);
  tellShown = () => {
    performance.mark('seamwright first picture');
    resolve();
  };
});

/**
 * Has the table painted beside the page, so that the page never stands still. One painting is made at a time, and
 * meanwhile only the latest scene waits.
 */
export function paint(scene: Scene): void {
  isPainting.value = true;
  next = scene;
  send();
}

function send(): void {
  if (!next || painting) return;
  const { block, threads } = next;
  painting = next;
  worker.postMessage({
    ...next,
    block: block.key === sent.block ? null : block,
    order: threads.map(({ key }) => key),
    threads: threads.filter(({ key }) => !sent.threads.has(key)),
    isFresh,
  } satisfies ToPaint);
  sent = { block: block.key, threads: new Set(threads.map(({ key }) => key)) };
  next = null;
  isFresh = false;
}

/** Does something once the next frame is over. */
function whenOver(does: () => void): void {
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = does;
    port2.postMessage(null);
  });
}

function startPainter(): Worker {
  const inside = document.getElementById('painter');
  return inside ? new Worker(addressOf(inside.textContent)) : new Worker(address, { type: 'module' });
}
