import { CORNER_MANNERS, type CornerManner, type Treatment } from '../../../src/formats/dressing.js';
import { findCorners } from '../../../src/geometry/corners.js';
import { change } from '../../state/actions.js';
import { withTreatment } from '../../state/edits.js';
import { placeAlong } from '../../state/handle-places.js';
import { stitchOf } from '../../state/line-facts.js';
import { CORNERS } from '../../state/manners.js';
import { styleAt } from '../../state/table-places.js';
import { told } from '../../state/work.js';
import type { OnSeam } from './more-handles.js';

const PICTURES: Readonly<Record<CornerManner, string>> = {
  turn: 'M5 19V6H18',
  round: 'M5 19V14Q5 6 13 6H18',
  break: 'M5 19V12M12 6H18',
};

/** At each sharp corner of a line how it passes that: a touch goes to the next way, for all of its corners. */
export function CornerMarks({ line, facts: { treatment, stitch }, points }: OnSeam) {
  const last = points.length - 2;
  const isClosed = Math.hypot(points[0] - points[last], points[1] - points[last + 1]) < 1e-6;
  const own = stitchOf(treatment.rows[0].stitch)?.corner ?? stitch?.corner ?? 'turn';
  const now = treatment.corner ?? own;
  const next = CORNER_MANNERS[(CORNER_MANNERS.indexOf(now) + 1) % CORNER_MANNERS.length];
  return (
    <>
      {findCorners(points, isClosed).map(({ u }, k) => (
        <button
          key={u}
          type="button"
          class="handle mark corner-mark"
          style={styleAt(placeAlong(points, u).at)}
          aria-label={`Corner ${k + 1}: it ${CORNERS[now]}; next it ${CORNERS[next]}`}
          title={`At its corners it ${CORNERS[now]}`}
          onClick={() => {
            change((was) => withTreatment(was, line, (one): Treatment => ({ ...one, corner: next })));
            told.value = `At its corners it ${CORNERS[next]} now`;
          }}
        >
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <path d={PICTURES[now]} />
          </svg>
        </button>
      ))}
    </>
  );
}
