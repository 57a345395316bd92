import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { Layers } from '../draw/layers.js';
import { drawTable } from '../draw/table.js';
import { handle } from '../state/hands.js';
import { lookImage, sewnTo } from '../state/look.js';
import { nextLine } from '../state/next-line.js';
import { isFitted, settle, view } from '../state/view.js';
import { picture, touched, work } from '../state/work.js';

/** The block on the table. */
export function Table() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const queue = useRef(0);
  const isShown = useRef(false);
  const layers = useRef(new Layers());

  const draw = () => {
    queue.current = 0;
    const element = canvas.current;
    if (!element || !picture.value) return;
    const room = element.getBoundingClientRect();
    const dots = devicePixelRatio || 1;
    const [width, height] = [Math.round(room.width * dots), Math.round(room.height * dots)];
    if (element.width !== width || element.height !== height) Object.assign(element, { width, height });
    const look = lookImage.value;
    settle(
      room,
      look ? { width: look.width + look.left, height: look.height + look.top } : picture.value.block,
    );
    drawTable(element.getContext('2d')!, dots, {
      picture: picture.value,
      view: view.value,
      touched: touched.value,
      hidden: work.value?.hidden ?? [],
      sewnTo: sewnTo.value,
      look: lookImage.value,
      layers: layers.current,
    });
    if (!isShown.current) performance.mark('seamwright first picture');
    isShown.current = true;
  };
  const drawSoon = () => {
    queue.current ||= requestAnimationFrame(draw);
  };

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
    drawSoon();
  });
  useEffect(() => {
    const watch = new ResizeObserver(drawSoon);
    watch.observe(canvas.current!);
    return () => watch.disconnect();
  }, []);
  useEffect(() => handle(canvas.current!), []);

  return (
    // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: keys go from seam to seam in it
    <canvas
      ref={canvas}
      class="table"
      tabIndex={0}
      role="application"
      aria-label="The dressed block. Arrow keys go from seam to seam, Enter goes to its measures."
      onKeyDown={(event) => {
        const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 } as const;
        const by = step[event.key as keyof typeof step];
        if (by) nextLine(by);
        else if (event.key === 'Enter')
          document.querySelector<HTMLElement>('.panel input, .panel button')?.focus();
        else return;
        event.preventDefault();
      }}
    >
      The dressed block
    </canvas>
  );
}
