import type { Point } from '../../../src/geometry/point.js';
import { drawing } from '../../state/drawing/board.js';
import { bent, lineOf, withoutNode } from '../../state/drawing/lines.js';
import {
  changeLine,
  dragGrip,
  dropGrip,
  type Grip,
  letGoOfPoint,
  putPoint,
  takeGrip,
} from '../../state/drawing/point-edits.js';
import { onBlock, view } from '../../state/view.js';

interface Gripping {
  readonly grip: Grip;
  readonly at: Point;
  readonly isRound: boolean;
  readonly label: string;
}

/** Arrow keys move by this, and with Shift by a tenth of it, mm. */
export const STEP = 1;

/** A handle of a line: dragged with a finger, a pen or a mouse, or moved by the arrow keys. */
export function LineGrip({ grip, at, isRound, label }: Gripping) {
  const { scale, x, y } = view.value;
  return (
    <button
      type="button"
      class={`${grip.kind}${isRound ? ' round' : ''}`}
      style={{ left: `${x + at[0] * scale}px`, top: `${y + at[1] * scale}px` }}
      aria-label={label}
      onPointerDown={({ currentTarget, pointerId }) => {
        currentTarget.setPointerCapture(pointerId);
        currentTarget.focus();
        takeGrip();
      }}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        const { left, top } = event.currentTarget.parentElement!.getBoundingClientRect();
        dragGrip(grip, onBlock(view.value, event.clientX - left, event.clientY - top));
      }}
      onPointerUp={dropGrip}
      onPointerCancel={dropGrip}
      onBlur={letGoOfPoint}
      onKeyDown={(event) => {
        const way = WAYS[event.key];
        const isOut = grip.kind === 'point' && (event.key === 'Delete' || event.key === 'Backspace');
        if (way) moveBy(grip, at, way, event.shiftKey ? STEP / 10 : STEP);
        else if (isOut) changeLine(grip.line, (line) => withoutNode(line, grip.place) ?? line);
        else return;
        event.preventDefault();
      }}
    />
  );
}

const WAYS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

function moveBy({ line: id, kind, place }: Grip, [x, y]: Point, [dx, dy]: Point, step: number): void {
  const to: Point = [x + dx * step, y + dy * step];
  if (kind === 'point') putPoint(id, place, to, `point ${id} ${place}`);
  else if (drawing.value && lineOf(drawing.value, id)) {
    changeLine(id, (line) => bent(line, place, to, 0.05), `bend ${id} ${place}`);
  }
}
