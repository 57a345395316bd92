import { change } from '../../state/actions.js';
import { withGuideSize } from '../../state/edits.js';
import { GUIDE_HEIGHTS, GUIDE_LENGTHS } from '../../state/guide-sizes.js';
import { acrossOf, alongOf, besideAt, lengthOf, placeAlong } from '../../state/handle-places.js';
import { lengthIn } from '../../state/units.js';
import { view } from '../../state/view.js';
import type { OnSeam } from './more-handles.js';
import { SlideHandle } from './slide-handle.js';

/** They stand so far off the waves, px; further where the number of repeats stands between. */
const CLEAR = 30;
const BELOW_LABEL = 78;
/** As much as a half of that takes with a handle, across and down, px. */
const LABEL = [120, 42] as const;

/** How high and how long the waves are that a line is worked on. */
export function GuideHandles({ line, facts: { treatment, measure }, points }: OnSeam) {
  const { guide } = treatment;
  if (!guide) return null;
  const wide = measure('width')?.value ?? 0;
  const { scale } = view.value;
  const on = placeAlong(points, lengthOf(points) / 4);
  const middle = placeAlong(points, lengthOf(points) / 2);
  const isClear = on.at.some((at, axis) => Math.abs(at - middle.at[axis]) * scale > LABEL[axis]);
  const off = (isClear ? CLEAR : BELOW_LABEL) / scale + wide / 2;
  const beside = besideAt(on, -(guide.height / 2 + off));
  return (
    <>
      <SlideHandle
        kind="guide-high"
        label="How high its waves are"
        at={beside}
        value={guide.height}
        {...GUIDE_HEIGHTS}
        show={lengthIn}
        measure={(to) => 2 * (-acrossOf(on, to) - off)}
        onBecome={(height) => change((was) => withGuideSize(was, line, { height }), `guide ${line}`)}
      >
        ↕
      </SlideHandle>
      <SlideHandle
        kind="guide-long"
        label="How long one wave is"
        at={[beside[0] + (on.along[0] * guide.length) / 2, beside[1] + (on.along[1] * guide.length) / 2]}
        value={guide.length}
        {...GUIDE_LENGTHS}
        show={lengthIn}
        measure={(to) => 2 * alongOf(on, to)}
        onBecome={(length) => change((was) => withGuideSize(was, line, { length }), `guide ${line}`)}
      >
        ↔
      </SlideHandle>
    </>
  );
}
