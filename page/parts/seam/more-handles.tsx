import type { Line } from '../../core/messages.js';
import type { Choose } from '../../state/free-place.js';
import type { LineFacts } from '../../state/line-facts.js';
import { isLookedAt } from '../../state/more-open.js';
import { AccentHandles } from './accent-handles.js';
import { CornerMarks } from './corner-marks.js';
import { GapHandles } from './gap-handles.js';
import { GuideHandles } from './guide-handles.js';
import { RowHandles } from './row-handles.js';
import { WayMarks } from './way-marks.js';

export interface OnSeam {
  readonly line: Line;
  readonly facts: LineFacts;
  /** of the line as it lies, mm */
  readonly points: Float64Array;
  /** finds them places where nothing else stands */
  readonly choose: Choose;
}

/** What a line can be told beside its size and spacing, by hand on the line itself, as far as it is looked at. */
export function MoreHandles(on: OnSeam) {
  if (on.line === 'outline') return isLookedAt('way') ? <CornerMarks {...on} /> : null;
  return (
    <>
      {isLookedAt('guide') && <GuideHandles {...on} />}
      {isLookedAt('accents') && <AccentHandles {...on} />}
      {isLookedAt('rows') && <RowHandles {...on} />}
      {isLookedAt('way') && (
        <>
          <CornerMarks {...on} />
          <WayMarks {...on} />
          <GapHandles {...on} />
        </>
      )}
    </>
  );
}
