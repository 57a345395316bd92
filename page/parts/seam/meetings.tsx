import type { Line, MeetingPlace } from '../../core/messages.js';
import { meetings, openMeeting } from '../../state/meeting-edits.js';
import { listed, meetingTitle } from '../../state/meeting-words.js';
import { lookAt } from '../../state/view.js';
import { Fold } from '../fold.js';
import { MeetingChoices } from './meeting-choices.js';

/** Where a seam meets others: who runs through, what is one line and what is two. */
export function Meetings({ line }: { line: Line }) {
  const places = meetings.value;
  if (places.length === 0) return null;
  return (
    <Fold title="Meets other seams" now={listed(places.flatMap(({ others }) => others))}>
      <ol class="pieces">
        {places.map((meeting) => (
          <Meeting key={meeting.at.join()} line={line} meeting={meeting} />
        ))}
      </ol>
    </Fold>
  );
}

function Meeting({ line, meeting }: { line: Line; meeting: MeetingPlace }) {
  const { at, placed } = meeting;
  return (
    <li>
      <div class="part-head">
        <strong>{meetingTitle(meeting)}</strong>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            openMeeting.value = at;
            lookAt(placed);
          }}
        >
          Show where
        </button>
      </div>
      <MeetingChoices line={line} meeting={meeting} />
    </li>
  );
}
