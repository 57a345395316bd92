import { useRef } from 'preact/hooks';
import { findCorners } from '../../src/geometry/corners.js';
import type { Line } from '../core/messages.js';
import { type Choose, type Chosen, choosing, HANDLE, type Round } from '../state/free-place.js';
import { handlePlaces, placeAlong } from '../state/handle-places.js';
import { labelParts, labelPlaces } from '../state/label-places.js';
import { type LineFacts, lineFacts } from '../state/line-facts.js';
import { pointsOf } from '../state/lines-near.js';
import { isOpenAt, meetings, openMeeting } from '../state/meeting-edits.js';
import { isLookedAt, isMoreOpen } from '../state/more-open.js';
import { styleAt } from '../state/table-places.js';
import { lengthIn } from '../state/units.js';
import { view } from '../state/view.js';
import { repeatsOf } from '../state/words.js';
import { picture } from '../state/work.js';
import { MeetingMarks, platesOf } from './seam/meeting-marks.js';
import { MoreHandles } from './seam/more-handles.js';
import { SeamHandle } from './seam-handle.js';

/** So far off what they measure handles stand, px. */
const CLEAR = 26;
/** What the mark of a junction takes, with some cloth around it, px. */
const JUNCTION = 13;

/** On the touched line: where it meets others, and its measures. */
export function SeamHandles({ line }: { line: Line }) {
  // what is in the hand stays under it, and all the rest where it is
  const chosen = useRef<Chosen>({ isHeld: false, nth: new Map() });
  const hold = (isHeld: boolean) => () => {
    chosen.current.isHeld = isHeld;
  };
  const facts = lineFacts(line);
  const points = picture.value && pointsOf(picture.value.block, line);
  const { scale } = view.value;
  return (
    <div
      class="on-table"
      onPointerDownCapture={hold(true)}
      onPointerUpCapture={hold(false)}
      onPointerCancelCapture={hold(false)}
    >
      {facts && points && (
        <MeasureHandles
          {...{ line, facts, points }}
          choose={choosing(standing(line, points, scale), chosen.current)}
        />
      )}
      {line !== 'outline' && <MeetingMarks line={line} />}
    </div>
  );
}

/** What stands on a line where it must: its junctions, and as far as they are looked at its corners and accents. mm */
function standing(line: Line, points: Float64Array, scale: number): Round[] {
  const rounds = (places: readonly (readonly [number, number])[], px: number) =>
    places.map((at): Round => ({ at, reach: px / scale }));
  const corners = isLookedAt('way') ? findCorners(points, isClosed(points)) : [];
  const accents = isLookedAt('accents') ? (picture.value?.accents ?? []) : [];
  const open = meetings.value.find(({ at }) => isOpenAt(at));
  return [
    ...rounds(open ? platesOf(open, scale) : [], HANDLE),
    ...(line === 'outline'
      ? []
      : rounds(
          meetings.value.map(({ placed }) => placed),
          JUNCTION,
        )),
    ...rounds(
      corners.map(({ u }) => placeAlong(points, u).at),
      HANDLE,
    ),
    ...rounds(
      accents.filter((one) => one.line === line).map(({ at }) => at),
      HANDLE,
    ),
  ];
}

const isClosed = (points: Float64Array): boolean => {
  const last = points.length - 2;
  return Math.hypot(points[0] - points[last], points[1] - points[last + 1]) < 1e-6;
};

interface Measuring {
  readonly line: Line;
  readonly facts: LineFacts;
  readonly points: Float64Array;
  readonly choose: Choose;
}

/** Handles for size and spacing, how many repeats there are, and handles for the rest when that is looked at. */
function MeasureHandles({ line, facts, points, choose }: Measuring) {
  const width = facts.measure('width');
  const repeat = facts.measure('repeat');
  if (!width || !repeat) return null;
  const { scale } = view.value;
  const clear = CLEAR / scale;
  const places = handlePlaces(points, width.value, facts.repeatMm || repeat.value, clear);
  const more = isMoreOpen.value ? <MoreHandles {...{ line, facts, points, choose }} /> : null;
  const size = choose('size', places.size, HANDLE / scale);
  const spacing = choose('spacing', places.spacing, HANDLE / scale);
  const told = facts.repeats > 0 ? repeatsOf(facts.repeats, lengthIn(facts.repeatMm)) : null;
  const { parts, reach } = labelParts(told ?? '', scale);
  const label = told && choose('label', labelPlaces(points, width.value, told, scale), reach, parts);
  // an open junction has the seam for itself and for what is looked at beside it
  if (openMeeting.value !== null) return more;
  return (
    <>
      <SeamHandle
        line={line}
        name="width"
        title="Size"
        kind="size"
        from={size.on}
        clear={clear}
        style={styleAt(size.at)}
        {...width}
      />
      <SeamHandle
        line={line}
        name="repeat"
        title="Spacing"
        kind="spacing"
        from={spacing.on}
        clear={clear}
        style={styleAt(spacing.at)}
        {...repeat}
      />
      {label && (
        <p class="beside" style={styleAt(label.at)}>
          {told}
        </p>
      )}
      {more}
    </>
  );
}
