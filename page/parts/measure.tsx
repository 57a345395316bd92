import { release } from '../state/actions.js';

interface Measuring {
  readonly title: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly show: (value: number) => string;
  readonly onChange: (value: number) => void;
}

/** A measure that is dragged, with what it is now beside it. */
export function Measure({ title, value, min, max, step, show, onChange }: Measuring) {
  return (
    <label class="measure">
      <span class="name">{title}</span>
      <input
        type="range"
        {...{ min, max, step, value }}
        aria-label={title}
        aria-valuetext={show(value)}
        onInput={({ currentTarget }) => onChange(Number(currentTarget.value))}
        onChange={release}
      />
      <output>{show(value)}</output>
    </label>
  );
}
