import type { Parameter } from '../../src/stitches/stitch.js';
import type { Line } from '../core/messages.js';
import { change, release } from '../state/actions.js';
import { withSize } from '../state/edits.js';
import { measureAt, type OnLine } from '../state/handle-places.js';
import { lengthIn } from '../state/units.js';
import { onBlock, view } from '../state/view.js';

interface Handle {
  readonly line: Line;
  /** of the stitch's measure */
  readonly name: string;
  readonly title: string;
  readonly kind: 'size' | 'spacing';
  /** from where on the line it measures */
  readonly from: OnLine;
  /** how far off what it measures it stands, mm */
  readonly clear: number;
  readonly about: Parameter;
  readonly value: number;
  readonly style: { left: string; top: string };
}

/** A handle on the seam, dragged across it or along it; the arrow keys move it too. */
export function SeamHandle({ line, name, title, kind, from, clear, about, value, style }: Handle) {
  const become = (wanted: number) => {
    const size = Math.round(10 * Math.min(about.max, Math.max(about.min, wanted))) / 10;
    if (size !== value) change((was) => withSize(was, line, 0, name, size), `${name} ${line}`);
  };
  return (
    <div
      role="slider"
      tabIndex={0}
      class={`handle ${kind}`}
      style={style}
      aria-label={`${title} of the stitch`}
      aria-valuenow={value}
      aria-valuemin={about.min}
      aria-valuemax={about.max}
      aria-valuetext={lengthIn(value)}
      onPointerDown={({ currentTarget, pointerId }) => currentTarget.setPointerCapture(pointerId)}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        const { left, top } = event.currentTarget.parentElement!.getBoundingClientRect();
        const at = onBlock(view.value, event.clientX - left, event.clientY - top);
        become(measureAt(from, kind, at, clear));
      }}
      onPointerUp={release}
      onPointerCancel={release}
      onKeyDown={(event) => {
        const by = { ArrowUp: 0.1, ArrowRight: 0.1, ArrowDown: -0.1, ArrowLeft: -0.1 }[event.key];
        if (!by) return;
        event.preventDefault();
        become(value + by);
      }}
    />
  );
}
