import { change } from '../../state/actions.js';
import { bothEnds } from '../../state/end-edits.js';
import { HANDLE } from '../../state/free-place.js';
import { alongOf, besideAt, lengthOf, placeAlong } from '../../state/handle-places.js';
import { GAPS } from '../../state/manners.js';
import { meetings } from '../../state/meeting-edits.js';
import { lengthIn } from '../../state/units.js';
import { view } from '../../state/view.js';
import { picture, pictured, work } from '../../state/work.js';
import type { OnSeam } from './more-handles.js';
import { SlideHandle } from './slide-handle.js';

/** Off the seam by so much, to one hand or the other, px: the mark of the junction lies on it. */
const ASIDE = [34, -34, 60, -60, 90, -90];

/** Where an end keeps clear of another seam's treatment: how much cloth it leaves, which is one measure for the block. */
export function GapHandles({ line, facts: { treatment }, points, choose }: OnSeam) {
  const dressing = work.value?.dressing;
  const gaps = picture.value?.report.fits.find(({ seam }) => seam === line)?.endGapMm;
  if (!dressing || !gaps || line === 'outline') return null;
  const length = lengthOf(points);
  return (
    <>
      {([0, 1] as const).map((which) => {
        const manner = bothEnds(treatment.ends)[which] ?? dressing.ends;
        const butts = meetings.value.some(
          ({ along, through }) =>
            through !== null && through !== line && (which === 0 ? along < 0.02 : along > 0.98),
        );
        if (manner === 'tuck' || !butts) return null;
        const off = Math.max(0, gaps[which]);
        const end = placeAlong(points, which === 0 ? 0 : length);
        const on = placeAlong(points, which === 0 ? off : length - off);
        const { at } = choose(
          `gap ${which}`,
          ASIDE.map((px) => ({ at: besideAt(on, px / view.value.scale) })),
          HANDLE / view.value.scale,
        );
        const away = (to: readonly [number, number]) => (which === 0 ? 1 : -1) * alongOf(end, to);
        return (
          <SlideHandle
            key={which}
            kind="gap-mark"
            label="Clear cloth between, all over the block"
            at={at}
            value={dressing.gap}
            {...GAPS}
            show={lengthIn}
            measure={(to) => (pictured.value?.dressing.gap ?? dressing.gap) + away(to) - off}
            onBecome={(gap) => change((was) => ({ ...was, gap }), 'gap')}
          >
            {which === 0 ? '⇥' : '⇤'}
          </SlideHandle>
        );
      })}
    </>
  );
}
