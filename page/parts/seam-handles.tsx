import type { Line } from '../core/messages.js';
import { handlePlaces, type OnLine } from '../state/handle-places.js';
import { lineFacts } from '../state/line-facts.js';
import { pointsOf } from '../state/lines-near.js';
import { isMoreOpen } from '../state/more-open.js';
import { styleAt } from '../state/table-places.js';
import { lengthIn } from '../state/units.js';
import { view } from '../state/view.js';
import { repeatsOf } from '../state/words.js';
import { picture } from '../state/work.js';
import { MeetingMarks } from './seam/meeting-marks.js';
import { MoreHandles } from './seam/more-handles.js';
import { SeamHandle } from './seam-handle.js';

/** So far off what they measure handles stand, px. */
const CLEAR = 26;

/** On the touched line: where it meets others, and its measures. */
export function SeamHandles({ line }: { line: Line }) {
  return (
    <div class="on-table">
      <MeasureHandles line={line} />
      {line !== 'outline' && <MeetingMarks line={line} />}
    </div>
  );
}

/** Handles for size and spacing, how many repeats there are, and handles for the rest when that is looked at. */
function MeasureHandles({ line }: { line: Line }) {
  const facts = lineFacts(line);
  const points = picture.value && pointsOf(picture.value.block, line);
  const width = facts?.measure('width');
  const repeat = facts?.measure('repeat');
  if (!facts || !points || !width || !repeat) return null;
  const clear = CLEAR / view.value.scale;
  const places = handlePlaces(points, width.value, facts.repeatMm || repeat.value, clear);
  return (
    <>
      <SeamHandle
        line={line}
        name="width"
        title="Size"
        kind="size"
        middle={places.middle}
        clear={clear}
        style={styleAt(places.size)}
        {...width}
      />
      <SeamHandle
        line={line}
        name="repeat"
        title="Spacing"
        kind="spacing"
        middle={places.middle}
        clear={clear}
        style={styleAt(places.spacing)}
        {...repeat}
      />
      {facts.repeats > 0 && (
        <p class="beside" style={{ ...styleAt(places.label), transform: asideBy(places.middle) }}>
          {repeatsOf(facts.repeats, lengthIn(facts.repeatMm))}
        </p>
      )}
      {isMoreOpen.value && <MoreHandles line={line} facts={facts} points={points} />}
    </>
  );
}

/** So far off the stitches the number of repeats stands, px. */
const LABEL_CLEAR = 12;

/** A label lies wholly to the right hand of the line, whichever way that goes. */
function asideBy({ left: [lx, ly] }: OnLine): string {
  // beside a slanting line it is a corner of the label that lies next to it
  const share = (toRight: number) => Math.max(-1, Math.min(1, 2 * toRight));
  const by = (toRight: number) => `calc(${50 * share(toRight) - 50}% + ${LABEL_CLEAR * toRight}px)`;
  return `translate(${by(-lx)}, ${by(-ly)})`;
}
