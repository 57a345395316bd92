import { clearCross, clearDraft, setCorner } from './clear-draft.js';
import { lineNear } from './lines-near.js';
import { isFitted, onBlock, panned, view, zoomed } from './view.js';
import { lineTitle } from './words.js';
import { picture, told, touched } from './work.js';

/** A finger or pen touches what lies within this, px of the page. */
const TOUCH = 18;
/** Moved less than this it was a touch, not a drag, px. */
const STILL = 6;

/** Touching, dragging, pinching and the wheel, on the table. Returns what takes it off again. */
export function handle(table: HTMLElement): () => void {
  const down = new Map<number, { x: number; y: number }>();
  let moved = 0;
  const place = (event: PointerEvent | WheelEvent) => {
    const { left, top } = table.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  const on = new AbortController();
  const listen = <K extends keyof HTMLElementEventMap>(
    kind: K,
    does: (event: HTMLElementEventMap[K]) => void,
  ) => table.addEventListener(kind, does, { signal: on.signal, passive: false });

  listen('pointerdown', (event) => {
    table.setPointerCapture(event.pointerId);
    if (down.size === 0) moved = 0;
    down.set(event.pointerId, place(event));
  });
  listen('pointermove', (event) => {
    const was = down.get(event.pointerId);
    if (!was) return;
    const is = place(event);
    moved += Math.hypot(is.x - was.x, is.y - was.y);
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
    down.set(event.pointerId, is);
    if (moved < STILL) return;
    isFitted.value = false;
    if (!other) view.value = panned(view.value, is.x - was.x, is.y - was.y);
    else {
      const factor =
        Math.hypot(is.x - other.x, is.y - other.y) / Math.hypot(was.x - other.x, was.y - other.y);
      const middle = { x: (is.x + other.x) / 2, y: (is.y + other.y) / 2 };
      const turned = zoomed(view.value, factor, middle.x, middle.y);
      view.value = panned(turned, (is.x - was.x) / 2, (is.y - was.y) / 2);
    }
  });
  listen('pointerup', (event) => {
    const was = down.get(event.pointerId);
    down.delete(event.pointerId);
    if (was && down.size === 0 && moved < STILL) touch(was.x, was.y);
  });
  listen('pointercancel', (event) => down.delete(event.pointerId));
  listen('wheel', (event) => {
    event.preventDefault();
    const { x, y } = place(event);
    isFitted.value = false;
    view.value = zoomed(view.value, Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0015)), x, y);
  });
  return () => on.abort();
}

function touch(x: number, y: number): void {
  if (!picture.value) return;
  if (clearDraft.value) {
    clearCross.value = null;
    setCorner(onBlock(view.value, x, y));
    return;
  }
  const reach = TOUCH / view.value.scale;
  touched.value = lineNear(picture.value.block, onBlock(view.value, x, y), Math.max(reach, 2.5));
  if (touched.value !== null) told.value = `${lineTitle(touched.value)} touched`;
}
