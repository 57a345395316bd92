import { useEffect, useRef } from 'preact/hooks';
import { isDrawing } from '../state/drawing/board.js';
import { touched } from '../state/work.js';
import { BlockPanel } from './block-panel.js';
import { DrawPanel } from './drawing/draw-panel.js';
import { LinePanel } from './line-panel.js';

/** Beside the table: the touched line, or the block as a whole. */
export function Panel() {
  const line = touched.value;
  const panel = useRef<HTMLElement>(null);
  // what is told of another line begins where it begins, however far down the last one was read
  useEffect(() => panel.current?.scrollTo(0, 0), [line]);
  if (isDrawing.value) {
    return (
      <aside class="panel" aria-label="Drawing seams">
        <DrawPanel />
      </aside>
    );
  }
  return (
    <aside ref={panel} class="panel" aria-label={line === null ? 'The block as a whole' : 'The touched seam'}>
      {line === null ? <BlockPanel /> : <LinePanel key={line} line={line} />}
    </aside>
  );
}
