import { change } from '../../state/actions.js';
import { withRow } from '../../state/edits.js';
import { HANDLE } from '../../state/free-place.js';
import { acrossOf, besideAt, lengthOf, placeAlong } from '../../state/handle-places.js';
import { FARTHEST_ROW, offsetTold } from '../../state/row-edits.js';
import { view } from '../../state/view.js';
import type { OnSeam } from './more-handles.js';
import { SlideHandle } from './slide-handle.js';

/** The first stands so far back from the middle of the seam; places for it and the others are so far apart, px. */
const BACK = 43;
const STEP = 12;

/** Each row is dragged off the seam, or onto it. */
export function RowHandles({ line, facts: { treatment, isTurnedOver }, points, choose }: OnSeam) {
  const left = isTurnedOver ? -1 : 1;
  const length = lengthOf(points);
  const { scale } = view.value;
  const back = Math.max(0, length / 2 - BACK / scale);
  const steps = Math.ceil((length * scale) / STEP);
  // back to its start, then on to its end
  const ways = Array.from({ length: steps }, (_, k) => back - (k * STEP) / scale).filter((u) => u >= 0);
  const on = Array.from({ length: steps }, (_, k) => back + ((k + 1) * STEP) / scale);
  const stands = [...ways, ...on.filter((u) => u <= length)].map((u) => placeAlong(points, u));
  return (
    <>
      {treatment.rows.map((row, r) => {
        const places = stands.map((on) => ({ at: besideAt(on, left * row.offset), on }));
        const { at, on } = choose(`row ${r}`, places, HANDLE / scale);
        return (
          <SlideHandle
            key={`${r} ${treatment.rows.length}`}
            kind="row-mark"
            label={`Row ${r + 1} off the seam`}
            at={at}
            value={row.offset}
            min={-FARTHEST_ROW}
            max={FARTHEST_ROW}
            step={0.1}
            show={(mm) => offsetTold(mm, isTurnedOver)}
            measure={(to) => left * acrossOf(on, to)}
            onBecome={(offset) =>
              change((was) => withRow(was, line, r, (one) => ({ ...one, offset })), `offset ${line} ${r}`)
            }
          >
            {r + 1}
          </SlideHandle>
        );
      })}
    </>
  );
}
