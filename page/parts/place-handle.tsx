import { release } from '../state/actions.js';
import { styleAt } from '../state/table-places.js';
import { onBlock, view } from '../state/view.js';

type Place = readonly [number, number];

interface Placing {
  readonly label: string;
  readonly at: Place;
  /** what it is of a shape; a place of its own where it is not said */
  readonly kind?: 'corner' | 'between';
  readonly id?: string;
  readonly onMove: (to: Place, from: Place, byKey: boolean) => void;
  readonly onDrop?: () => void;
  /** it cannot be taken off where this is not said */
  readonly onRemove?: () => void;
}

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** A place on the block that is dragged about; arrow keys move it by a millimeter, Delete takes it off. */
export function PlaceHandle({ id, label, at, kind, onMove, onDrop, onRemove }: Placing) {
  const letGo = () => {
    release();
    onDrop?.();
  };
  return (
    <button
      type="button"
      id={id}
      class={`handle place ${kind ?? ''}`}
      aria-label={`${label}: drag it or use the arrow keys${onRemove ? ', Delete takes it off' : ''}`}
      style={styleAt(at)}
      onPointerDown={({ currentTarget, pointerId }) => currentTarget.setPointerCapture(pointerId)}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        const { left, top } = event.currentTarget.parentElement!.getBoundingClientRect();
        onMove(onBlock(view.value, event.clientX - left, event.clientY - top), at, false);
      }}
      onPointerUp={letGo}
      onPointerCancel={letGo}
      onKeyDown={(event) => {
        const step = STEPS[event.key];
        if (step) onMove([at[0] + step[0], at[1] + step[1]], at, true);
        else if (onRemove && (event.key === 'Delete' || event.key === 'Backspace')) onRemove();
        else return;
        event.preventDefault();
        event.stopPropagation();
      }}
    />
  );
}
