import { change } from '../../state/actions.js';
import { withRow } from '../../state/edits.js';
import { acrossOf, besideAt, freeAlong, lengthOf, placeAlong } from '../../state/handle-places.js';
import { meetings } from '../../state/meeting-edits.js';
import { FARTHEST_ROW, offsetTold } from '../../state/row-edits.js';
import { view } from '../../state/view.js';
import type { OnSeam } from './more-handles.js';
import { SlideHandle } from './slide-handle.js';

/** Handles of rows stand so far apart along the seam, px. */
const APART = 36;
/** They stay so far off the marks of junctions, px. */
const OFF_MARKS = 28;

/** Each row is dragged off the seam, or onto it. */
export function RowHandles({ line, facts: { treatment, isTurnedOver }, points }: OnSeam) {
  const left = isTurnedOver ? -1 : 1;
  const length = lengthOf(points);
  const { scale } = view.value;
  const marks = meetings.value.map(({ along }) => along * length * scale);
  const stands = freeAlong(
    treatment.rows.length,
    (length * scale) / 2 - APART * 1.2,
    APART,
    marks,
    OFF_MARKS,
  );
  return (
    <>
      {treatment.rows.map((row, r) => {
        const on = placeAlong(points, stands[r] / scale);
        return (
          <SlideHandle
            key={`${r} ${treatment.rows.length}`}
            kind="row-mark"
            label={`Row ${r + 1} off the seam`}
            at={besideAt(on, left * row.offset)}
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
