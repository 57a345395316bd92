import { change } from '../../state/actions.js';
import { withGuideSize } from '../../state/edits.js';
import { HANDLE } from '../../state/free-place.js';
import { GUIDE_HEIGHTS, GUIDE_LENGTHS } from '../../state/guide-sizes.js';
import { acrossOf, alongOf, besideAt, lengthOf, placeAlong } from '../../state/handle-places.js';
import { lengthIn } from '../../state/units.js';
import { view } from '../../state/view.js';
import type { OnSeam } from './more-handles.js';
import { SlideHandle } from './slide-handle.js';

/** They stand so far off the waves, px: further where something else stands between. */
const CLEAR = [30, 54, 78, 102];
/** Beside these shares of the seam. */
const BESIDE = [0.25, 0.75, 0.5];

/** How high and how long the waves are that a line is worked on. */
export function GuideHandles({ line, facts: { treatment, measure }, points, choose }: OnSeam) {
  const { guide } = treatment;
  if (!guide) return null;
  const wide = measure('width')?.value ?? 0;
  const { scale } = view.value;
  // right hand before left
  const places = [-1, 1].flatMap((hand) =>
    CLEAR.flatMap((clear) =>
      BESIDE.map((share) => {
        const on = placeAlong(points, share * lengthOf(points));
        const off = clear / scale + wide / 2;
        return { at: besideAt(on, hand * (guide.height / 2 + off)), on, off, hand };
      }),
    ),
  );
  const high = choose('high', places, HANDLE / scale);
  const waves = places.flatMap(({ at: [x, y], on }) =>
    [1, -1].map((way) => {
      const by = (way * guide.length) / 2;
      return { at: [x + by * on.along[0], y + by * on.along[1]] as const, on, way };
    }),
  );
  const long = choose('long', waves, HANDLE / scale);
  return (
    <>
      <SlideHandle
        kind="guide-high"
        label="How high its waves are"
        at={high.at}
        value={guide.height}
        {...GUIDE_HEIGHTS}
        show={lengthIn}
        measure={(to) => 2 * (high.hand * acrossOf(high.on, to) - high.off)}
        onBecome={(height) => change((was) => withGuideSize(was, line, { height }), `guide ${line}`)}
      >
        ↕
      </SlideHandle>
      <SlideHandle
        kind="guide-long"
        label="How long one wave is"
        at={long.at}
        value={guide.length}
        {...GUIDE_LENGTHS}
        show={lengthIn}
        measure={(to) => 2 * long.way * alongOf(long.on, to)}
        onBecome={(length) => change((was) => withGuideSize(was, line, { length }), `guide ${line}`)}
      >
        ↔
      </SlideHandle>
    </>
  );
}
