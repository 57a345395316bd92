import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { drawTable } from '../draw/table.js';
import { handle } from '../state/hands.js';
import { fitted, isFitted, view } from '../state/view.js';
import { picture, touched, work } from '../state/work.js';

/** The block on the table. */
export function Table() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const queue = useRef(0);

  const draw = () => {
    queue.current = 0;
    const element = canvas.current;
    if (!element || !picture.value) return;
    const room = element.getBoundingClientRect();
    const dots = devicePixelRatio || 1;
    const [width, height] = [Math.round(room.width * dots), Math.round(room.height * dots)];
    if (element.width !== width || element.height !== height) Object.assign(element, { width, height });
    if (isFitted.value) view.value = fitted(picture.value.block, room);
    drawTable(element.getContext('2d')!, dots, {
      picture: picture.value,
      view: view.value,
      touched: touched.value,
      hidden: work.value?.hidden ?? [],
    });
  };
  const drawSoon = () => {
    queue.current ||= requestAnimationFrame(draw);
  };

  useSignalEffect(() => {
    void [picture.value, view.value, touched.value, isFitted.value, work.value?.hidden];
    drawSoon();
  });
  useEffect(() => {
    const watch = new ResizeObserver(drawSoon);
    watch.observe(canvas.current!);
    return () => watch.disconnect();
  }, []);
  useEffect(() => handle(canvas.current!), []);

  return (
    <canvas
      ref={canvas}
      class="table"
      tabIndex={0}
      role="img"
      aria-label="The dressed block. Touch a seam to dress it."
    >
      The dressed block
    </canvas>
  );
}
