import type { Sheet } from '../../state/bench/sheet.js';
import { lengthIn } from '../../state/units.js';

interface Gridded {
  readonly size: Sheet;
  /** of the unit, mm */
  readonly length: number;
  /** px to the mm */
  readonly scale: number;
  /** the unit is half a repeat */
  readonly isHalf: boolean;
}

/** Millimeters, every fifth stronger; the seam; and where the repeat begins and ends. */
export function SheetGrid({ size: { left, top, width, height }, length, scale, isHalf }: Gridded) {
  const whole = (from: number, long: number) =>
    Array.from({ length: Math.ceil(long) + 1 }, (_, i) => Math.ceil(from) + i);
  const ups = whole(left, width);
  const acrosses = whole(top, height);
  const strong = (at: number) => (at % 5 === 0 ? 'strong' : '');
  return (
    <g class="grid">
      <rect class="repeat" x={0} y={top} width={length} height={height} />
      {ups.map((x) => (
        <path key={x} class={strong(x)} d={`M${x} ${top}v${height}`} />
      ))}
      {acrosses.map((y) => (
        <path key={y} class={strong(y)} d={`M${left} ${y}h${width}`} />
      ))}
      <path class="seam" d={`M${left} 0h${width}`} />
      {[0, length].map((x) => (
        <path key={x} class="end" d={`M${x} ${top}v${height}`} />
      ))}
      <text
        transform={`translate(${length / 2} ${top + height}) scale(${1 / scale})`}
        y={-10}
        text-anchor="middle"
      >
        {isHalf ? 'half a repeat' : 'one repeat'}, {lengthIn(length)}
      </text>
    </g>
  );
}
