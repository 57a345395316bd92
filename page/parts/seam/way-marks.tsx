import type { Treatment } from '../../../src/formats/dressing.js';
import { change } from '../../state/actions.js';
import { withTreatment } from '../../state/edits.js';
import { HANDLE } from '../../state/free-place.js';
import { besideAt, lengthOf, type OnLine, placeBeyond } from '../../state/handle-places.js';
import { styleAt } from '../../state/table-places.js';
import { view } from '../../state/view.js';
import { told } from '../../state/work.js';
import type { OnSeam } from './more-handles.js';

/**
 * The marks stand so far off the stitches, px, on the side of the handle of their size or on the other, and so far along from it:
 * beyond the ends of a short seam.
 */
const CLEAR = [26, -26, 60, -60];
const ALONG = [62, 112, -62, -112, 162, -162];

/** To which hand it stands, and which way it grows: each is turned over by a touch. */
export function WayMarks({ line, facts: { treatment, measure, isTurnedOver }, points, choose }: OnSeam) {
  const { side, reverse } = treatment;
  const { scale } = view.value;
  const length = lengthOf(points);
  const half = (measure('width')?.value ?? 0) / 2;
  const places = CLEAR.flatMap((off) =>
    ALONG.map((by) => {
      const on = placeBeyond(points, length / 2 + by / scale);
      return { at: besideAt(on, Math.sign(off) * half + off / scale), on };
    }),
  );
  const set = (part: Partial<Treatment>, what: string) => {
    change((was) => withTreatment(was, line, (one) => ({ ...one, ...part })));
    told.value = what;
  };
  const over = choose('over', places, HANDLE / scale);
  const grows = choose('grows', places, HANDLE / scale);
  const hand = side ?? (isTurnedOver ? 'right' : 'left');
  const other = hand === 'left' ? 'right' : 'left';
  return (
    <>
      <Mark
        at={over.at}
        along={over.on}
        turn={90}
        label={`It stands to the ${hand}: turn it over`}
        onTouch={() => set({ side: other }, `It stands to the ${other} now`)}
        d="M4 12H20M8 8L4 12L8 16M16 8L20 12L16 16"
      />
      <Mark
        at={grows.at}
        along={grows.on}
        turn={reverse ? 180 : 0}
        label={`It grows ${reverse ? 'against' : 'with'} the seam: turn it round`}
        onTouch={() => set({ reverse: !reverse }, `It grows ${reverse ? 'with' : 'against'} the seam now`)}
        d="M4 12H20M14 6L20 12L14 18"
      />
    </>
  );
}

interface Marking {
  readonly at: readonly [number, number];
  readonly along: OnLine;
  /** of its picture against the line, degrees */
  readonly turn: number;
  readonly label: string;
  readonly d: string;
  readonly onTouch: () => void;
}

function Mark({ at, along: { along }, turn, label, d, onTouch }: Marking) {
  const degrees = (Math.atan2(along[1], along[0]) * 180) / Math.PI + turn;
  return (
    <button
      type="button"
      class="handle mark way-mark"
      style={styleAt(at)}
      aria-label={label}
      title={label}
      onClick={onTouch}
    >
      <svg viewBox="0 0 24 24" aria-hidden="true" style={{ transform: `rotate(${degrees}deg)` }}>
        <path d={d} />
      </svg>
    </button>
  );
}
