import { release } from '../state/actions.js';
import { onBlock, view } from '../state/view.js';

interface Placing {
  readonly label: string;
  readonly at: readonly [number, number];
  readonly onMove: (at: readonly [number, number]) => void;
  readonly onRemove: () => void;
}

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** A place on the block that is dragged about; arrow keys move it by a millimeter, Delete takes it off. */
export function PlaceHandle({ label, at, onMove, onRemove }: Placing) {
  return (
    <button
      type="button"
      class="handle place"
      aria-label={`${label}: drag it or use the arrow keys, Delete takes it off`}
      style={{
        left: `${view.value.x + at[0] * view.value.scale}px`,
        top: `${view.value.y + at[1] * view.value.scale}px`,
      }}
      onPointerDown={({ currentTarget, pointerId }) => currentTarget.setPointerCapture(pointerId)}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        const { left, top } = event.currentTarget.parentElement!.getBoundingClientRect();
        onMove(onBlock(view.value, event.clientX - left, event.clientY - top));
      }}
      onPointerUp={release}
      onKeyDown={(event) => {
        const step = STEPS[event.key];
        if (step) onMove([at[0] + step[0], at[1] + step[1]]);
        else if (event.key === 'Delete' || event.key === 'Backspace') onRemove();
        else return;
        event.preventDefault();
        event.stopPropagation();
      }}
    />
  );
}
