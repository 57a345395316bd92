import type { ComponentChildren } from 'preact';
import { release } from '../../state/actions.js';
import { styleAt } from '../../state/table-places.js';
import { onBlock, view } from '../../state/view.js';

type Place = readonly [number, number];

interface Sliding {
  /** how it looks */
  readonly kind: string;
  readonly label: string;
  readonly at: Place;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly show: (value: number) => string;
  /** the measure that is meant where it was dragged to */
  readonly measure: (to: Place) => number;
  readonly onBecome: (value: number) => void;
  readonly children?: ComponentChildren;
}

/** A measure that is dragged on the seam itself; the arrow keys change it too. */
export function SlideHandle(sliding: Sliding) {
  const { kind, label, at, value, min, max, step, show, measure, onBecome, children } = sliding;
  const become = (wanted: number) => {
    const tidy = Math.round(Math.round(Math.min(max, Math.max(min, wanted)) / step) * step * 100) / 100;
    if (tidy !== value) onBecome(tidy);
  };
  return (
    <div
      role="slider"
      tabIndex={0}
      class={`handle mark ${kind}`}
      style={styleAt(at)}
      aria-label={label}
      aria-valuenow={value}
      aria-valuemin={min}
      aria-valuemax={max}
      aria-valuetext={show(value)}
      title={`${label}: ${show(value)}`}
      onPointerDown={({ currentTarget, pointerId }) => currentTarget.setPointerCapture(pointerId)}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        const { left, top } = event.currentTarget.parentElement!.getBoundingClientRect();
        become(measure(onBlock(view.value, event.clientX - left, event.clientY - top)));
      }}
      onPointerUp={release}
      onPointerCancel={release}
      onKeyDown={(event) => {
        const way = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
        if (!way) return;
        event.preventDefault();
        event.stopPropagation();
        become(value + way * step);
      }}
    >
      <span aria-hidden="true">{children}</span>
    </div>
  );
}
