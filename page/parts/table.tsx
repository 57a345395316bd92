import { untracked, useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { CROSS_STEP, clearDraft, shapeKey } from '../state/clear-draft.js';
import { handle } from '../state/hands.js';
import { lookImage, sewnTo } from '../state/look.js';
import { nextLine } from '../state/next-line.js';
import { isPainting, paint, showPaintings } from '../state/painter.js';
import { lengthIn } from '../state/units.js';
import { isFitted, settle, type View, view } from '../state/view.js';
import { picture, touched, work } from '../state/work.js';
import { LookPicture } from './look-picture.js';

/** The block on the table. */
export function Table() {
  const table = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const queue = useRef(0);
  const painted = useRef<View | null>(null);

  const isQueued = useSignal(false);
  const isBusy = useComputed(() => isQueued.value || isPainting.value);

  const paintNow = () => {
    queue.current = 0;
    isQueued.value = false;
    const now = picture.value;
    if (!table.current || !now) return;
    const room = table.current.getBoundingClientRect();
    const dots = devicePixelRatio || 1;
    settle(room, now.block);
    const hidden = work.value?.hidden ?? [];
    const isWhole = sewnTo.value === null;
    const { block, keptClear, laid } = now;
    paint({
      block,
      keptClear,
      laid,
      threads: now.stops.slice(0, sewnTo.value ?? undefined).filter(({ title }) => !hidden.includes(title)),
      marks: isWhole ? now.marks : [],
      touched: touched.value,
      isLook: lookImage.value !== null,
      view: view.value,
      width: Math.round(room.width * dots),
      height: Math.round(room.height * dots),
      dots,
    });
  };
  const paintSoon = () => {
    isQueued.value = true;
    queue.current ||= requestAnimationFrame(paintNow);
  };

  useEffect(() => {
    const element = canvas.current!;
    const ctx = element.getContext('bitmaprenderer')!;
    showPaintings((bitmap, scene) => {
      const [width, height] = [bitmap.width / scene.dots, bitmap.height / scene.dots];
      ctx.transferFromImageBitmap(bitmap);
      Object.assign(element.style, { width: `${width}px`, height: `${height}px` });
      painted.current = scene.view;
      lay(element, scene.view);
    });
    paintSoon();
    const watch = new ResizeObserver(paintSoon);
    watch.observe(table.current!);
    const off = handle(table.current!);
    return () => {
      showPaintings(() => {});
      watch.disconnect();
      off();
    };
  }, []);
  useSignalEffect(() => {
    void [
      picture.value,
      view.value,
      touched.value,
      isFitted.value,
      work.value?.hidden,
      sewnTo.value,
      lookImage.value,
    ];
    // the first one goes ahead of all that the page renders beside it
    if (picture.value && !painted.current) untracked(paintNow);
    else paintSoon();
  });
  // the painting goes along at once, and is painted anew where it lies then
  useSignalEffect(() => {
    void view.value;
    if (canvas.current && painted.current) lay(canvas.current, painted.current);
  });

  return (
    <div
      ref={table}
      class="table"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: keys go from seam to seam in it
      tabIndex={0}
      role="application"
      aria-busy={isBusy}
      aria-label={
        clearDraft.value
          ? `The dressed block. Arrow keys move a cross by ${lengthIn(CROSS_STEP)}, with Shift by ${lengthIn(CROSS_STEP / 10)}; Enter sets a corner there, twice at one place closes the shape.`
          : 'The dressed block. Arrow keys go from seam to seam, Enter goes to its measures.'
      }
      onKeyDown={(event) => {
        if (clearDraft.value) {
          if (!shapeKey(event)) return;
          event.preventDefault();
          event.stopPropagation();
          return;
        }
        const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 } as const;
        const by = step[event.key as keyof typeof step];
        if (by) nextLine(by);
        else if (event.key === 'Enter')
          document.querySelector<HTMLElement>('.panel input, .panel button')?.focus();
        else return;
        event.preventDefault();
      }}
    >
      <LookPicture />
      <canvas ref={canvas} />
    </div>
  );
}

/** Lays a painting where the view is now. */
function lay(canvas: HTMLElement, was: View): void {
  const { scale, x, y } = view.peek();
  const by = scale / was.scale;
  const isThere = by === 1 && x === was.x && y === was.y;
  canvas.style.transform = isThere ? '' : `translate(${x - by * was.x}px, ${y - by * was.y}px) scale(${by})`;
}
