import type { Handle } from '../../state/bench/handles.js';
import { chosen } from '../../state/bench/on-bench.js';
import { lengthIn } from '../../state/units.js';

interface Marked {
  readonly handle: Handle;
  /** it bends a leg, and is no hole */
  readonly isBend: boolean;
  readonly isChosen: boolean;
  /** px to the mm */
  readonly scale: number;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** A needle point is round, what bends a leg is a square on its corner, a width is a bar. */
export function HandleMark({ handle, isBend, isChosen, scale, onKeyDown }: Marked) {
  const { name, u, v, widens } = handle;
  const px = 1 / scale;
  const kind = widens ? 'width' : isBend ? 'bend' : 'hole';
  const what = widens ? name : `${isBend ? 'Bend' : 'Needle point'} ${name}`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing
    <g
      class={`mark ${kind} ${isChosen ? 'chosen' : ''}`}
      transform={`translate(${u} ${-v}) scale(${px})`}
      role="button"
      tabIndex={0}
      aria-pressed={isChosen}
      aria-label={`${what}, ${lengthIn(u)} along, ${lengthIn(v)} across`}
      data-name={name}
      onFocus={() => {
        chosen.value = name;
      }}
      onKeyDown={onKeyDown}
    >
      <circle class="ring" r={15} />
      {kind === 'hole' && <circle class="shape" r={6.5} />}
      {kind === 'bend' && <rect class="shape" x={-5} y={-5} width={10} height={10} transform="rotate(45)" />}
      {kind === 'width' && (
        <rect
          class="shape"
          x={-3}
          y={-8}
          width={6}
          height={16}
          rx={3}
          transform={`rotate(${(Math.atan2(-widens!.v, widens!.u) * 180) / Math.PI})`}
        />
      )}
      {isChosen && (
        <text class="name" x={16} y={-14}>
          {name}
        </text>
      )}
    </g>
  );
}
