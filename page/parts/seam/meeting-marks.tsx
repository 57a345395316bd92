import { useEffect } from 'preact/hooks';
import type { Line, MeetingPlace } from '../../core/messages.js';
import { cardPlace } from '../../state/card-place.js';
import { treatmentOf } from '../../state/edits.js';
import { freest, HANDLE, type Round } from '../../state/free-place.js';
import { lengthOf, placeAlong } from '../../state/handle-places.js';
import { pointsOf } from '../../state/lines-near.js';
import { isOpenAt, learnMeetings, meetings, openMeeting } from '../../state/meeting-edits.js';
import { meetingTitle } from '../../state/meeting-words.js';
import { onTable, styleAt } from '../../state/table-places.js';
import { tableRoom, view } from '../../state/view.js';
import { lineTitle } from '../../state/words.js';
import { picture, work } from '../../state/work.js';
import { EndChoice } from './end-choice.js';
import { MeetingChoices } from './meeting-choices.js';

/** Where the touched seam meets others: a mark on each junction, and beside the one that is touched what can be said of it. */
export function MeetingMarks({ line }: { line: Line }) {
  const source = work.value?.dressing.block;
  useEffect(() => {
    meetings.value = [];
    return () => {
      openMeeting.value = null;
    };
  }, [line]);
  useEffect(() => void learnMeetings(line), [line, source]);
  const places = meetings.value;
  const open = places.find(({ at }) => isOpenAt(at));
  return (
    <>
      {open && <Arms line={line} meeting={open} />}
      {places.map((meeting) => (
        <button
          key={meeting.at.join()}
          type="button"
          class="handle junction"
          style={styleAt(meeting.placed)}
          aria-label={`Where it meets ${meetingTitle(meeting).toLowerCase()}`}
          aria-expanded={meeting === open}
          onClick={() => {
            openMeeting.value = meeting === open ? null : meeting.at;
          }}
        />
      ))}
      {open && <Card key={open.at.join()} line={line} meeting={open} />}
    </>
  );
}

/** Arms are drawn so long, px, and their seams' numbers stand at the first of these distances where no other mark is. */
const ARM = 46;
const PLATES = [60, 88, 116];
/** The arms of a seam that ends here stop so far off, px. */
const OFF = 13;

/** Where the numbers of the seams around a junction stand, mm. */
export function platesOf({ placed: [x, y], arms }: MeetingPlace, scale: number): [number, number][] {
  const there = meetings.value.map(({ placed: at }): Round => ({ at, reach: HANDLE / scale }));
  return arms.map(({ toward: [dx, dy] }) => {
    const places = PLATES.map((off): [number, number] => [x + (dx * off) / scale, y + (dy * off) / scale]);
    return places[freest(places, HANDLE / scale, there)];
  });
}

/** Who runs through is drawn through; who ends here stops before it. */
function Arms({ line, meeting }: { line: Line; meeting: MeetingPlace }) {
  const { placed, arms, through } = meeting;
  const [x, y] = onTable(placed);
  const plates = platesOf(meeting, view.value.scale);
  return (
    <>
      <svg class="arms" aria-hidden="true">
        {arms.map(({ seam, toward: [dx, dy] }, k) => {
          const from = seam === through ? 0 : OFF;
          const d = `M${x + dx * from} ${y + dy * from}L${x + dx * ARM} ${y + dy * ARM}`;
          const bar = `M${x + dx * from - dy * 8} ${y + dy * from + dx * 8}l${dy * 16} ${-dx * 16}`;
          return (
            <g key={k} class={seam === through ? 'runs' : ''}>
              <path class="rim" d={d} />
              <path d={d} />
              {seam !== through && <path class="rim" d={bar} />}
              {seam !== through && <path d={bar} />}
            </g>
          );
        })}
      </svg>
      {arms.map(({ seam }, k) => (
        <span key={k} class={`arm-plate${seam === line ? ' own' : ''}`} style={styleAt(plates[k])}>
          {seam}
        </span>
      ))}
    </>
  );
}

/**
 * What a card takes of the table, and how far it stays off its junction, px: wide, with titles beside what is chosen; or as
 * narrow as lies beside a seam in the middle, with titles above it. The second height is with the choice of an end.
 */
const WIDE = { width: 370, heights: [216, 276] } as const;
const NARROW = { width: 280, heights: [272, 350] } as const;
const CARD_OFF = 84;
/** The seam is looked at in so many places, that the card leaves in sight. */
const LOOKS = 24;

/** The choices of one junction, beside it. */
function Card({ line, meeting }: { line: Line; meeting: MeetingPlace }) {
  const room = tableRoom.value;
  const treatment = work.value && treatmentOf(work.value.dressing, line);
  const { along, through } = meeting;
  const isEnd = along < 0.02 ? 0 : along > 0.98 ? 1 : null;
  const ending = treatment && isEnd !== null && through !== null && through !== line;
  const isNarrow = room.width / 2 < WIDE.width + CARD_OFF;
  const { width, heights } = isNarrow ? NARROW : WIDE;
  const points = picture.value && pointsOf(picture.value.block, line);
  const worked = points
    ? Array.from({ length: LOOKS }, (_, i) =>
        onTable(placeAlong(points, ((i + 0.5) / LOOKS) * lengthOf(points)).at),
      )
    : [];
  const place = cardPlace(
    onTable(meeting.placed),
    { width, height: heights[ending ? 1 : 0] },
    room,
    CARD_OFF,
    worked,
  );
  return (
    <section
      class={isNarrow ? 'junction-card narrow' : 'junction-card'}
      aria-label={`Where it meets ${meetingTitle(meeting).toLowerCase()}`}
      style={{ left: `${place.left}px`, top: `${place.top}px`, width: `${width}px` }}
      ref={(card) => {
        if (card && !card.dataset.begun) {
          card.dataset.begun = 'yes';
          card.querySelector('select')?.focus({ preventScroll: true });
        }
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        leave();
      }}
    >
      <div class="part-head">
        <strong>{meetingTitle(meeting)}</strong>
        <button type="button" class="quiet" onClick={leave}>
          Done
        </button>
      </div>
      <MeetingChoices line={line} meeting={meeting} />
      {ending && (
        <EndChoice
          title={`It ends at ${lineTitle(through).toLowerCase()}`}
          {...{ line, treatment }}
          which={isEnd}
        />
      )}
    </section>
  );
}

function leave(): void {
  openMeeting.value = null;
  document.querySelector<HTMLElement>('.table')?.focus();
}
