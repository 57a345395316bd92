import { clearCross, clearDraft, closeShape, leaveShape } from '../state/clear-draft.js';
import { LEAST_CORNERS } from '../state/clear-shapes.js';
import { onTable } from '../state/table-places.js';
import { plural } from '../state/words.js';

/** While the corners of a place to be kept clear are set: what there is of it, and what can be done. */
export function ClearDraft() {
  const corners = clearDraft.value;
  if (!corners) return null;
  const cross = clearCross.value;
  const places = corners.map(onTable);
  const line = [...places, ...(cross ? [onTable(cross)] : [])].map((at) => at.join()).join(' ');
  const isShape = corners.length >= LEAST_CORNERS;
  return (
    <div class="on-table">
      <svg class="draft" aria-hidden="true">
        {isShape && <polygon points={places.map((at) => at.join()).join(' ')} />}
        <polyline class="rim" points={line} />
        <polyline points={line} />
        {places.map(([x, y], i) => (
          <circle
            key={`${i} ${x}`}
            class={i === 0 && isShape ? 'closing' : ''}
            cx={x}
            cy={y}
            r={i === 0 ? 9 : 6}
          />
        ))}
        {cross && <path class="cross" d={crossAt(onTable(cross))} />}
      </svg>
      <div class="draft-bar">
        <span>
          {corners.length === 0
            ? 'Touch the corners of what is to stay clear'
            : isShape
              ? 'Touch the first corner again, or'
              : plural(corners.length, 'corner')}
        </span>
        {isShape && (
          <button type="button" onClick={closeShape}>
            Close the shape
          </button>
        )}
        <button type="button" class="quiet" onClick={leaveShape}>
          Leave it
        </button>
      </div>
    </div>
  );
}

const crossAt = ([x, y]: readonly [number, number]): string =>
  `M${x - 14} ${y}H${x + 14}M${x} ${y - 14}V${y + 14}`;
