import { useEffect } from 'preact/hooks';
import type { Line, MeetingPlace } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { isAligned, withAligned } from '../../state/block-edits.js';
import { learnMeetings, meetings, sayOf } from '../../state/meeting-edits.js';
import { lookAt } from '../../state/view.js';
import { lineTitle } from '../../state/words.js';
import { work } from '../../state/work.js';
import { Choice } from '../choice.js';
import { Fold } from '../fold.js';
import { Tick } from '../tick.js';

/** Where a seam meets others: who runs through, what is one line and what is two. */
export function Meetings({ line }: { line: Line }) {
  const source = work.value?.dressing.block;
  useEffect(() => {
    meetings.value = [];
    void learnMeetings(line);
  }, [line, source]);
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
  const { at, placed, along, others, through, runsOn, joins, split, said } = meeting;
  const whose = (id: number) => (id === line ? 'this seam' : lineTitle(id).toLowerCase());
  const byItself = through === null ? 'nobody' : whose(through);
  return (
    <li>
      <div class="part-head">
        <strong>
          {nameAll(others) || 'Parted from itself'}, {whereAlong(along)}
        </strong>
        <button type="button" class="quiet" onClick={() => lookAt(placed)}>
          Show where
        </button>
      </div>
      <Choice
        title="Runs through"
        value={said.through === null ? '' : String(said.through)}
        options={[
          ['', said.through === null ? `as the block: ${byItself}` : 'as the block'],
          ...runsOn.map(({ now, plain }) => [String(plain), whose(now)] as const),
        ]}
        onChoose={(plain) => void sayOf(meeting, { through: plain ? Number(plain) : null })}
      />
      <Choice
        title="This seam here"
        value={said.join ? 'joined' : said.split !== null ? 'parted' : ''}
        options={[
          ['', 'as the block'],
          ...(said.join ? ([['joined', 'made one line here']] as const) : []),
          ...(said.split !== null ? ([['parted', 'ends here, as you said']] as const) : []),
          ...joins.map(({ now, plain }) => [`join ${plain}`, `one line with ${whose(now)}`] as const),
          ...(split ? ([[`split ${split.plain}`, 'ends here: two seams']] as const) : []),
        ]}
        onChoose={(choice) => {
          const [what, plain] = choice.split(' ');
          if (what === 'joined' || what === 'parted') return;
          const own = meeting.own;
          void sayOf(meeting, {
            line:
              what === 'join'
                ? { join: [own, Number(plain)] }
                : what === 'split'
                  ? { split: Number(plain) }
                  : null,
            // a word on who runs through may name a seam that is another one then
            through: null,
          });
        }}
      />
      <Tick
        title="The needle shows this place first"
        about="To see whether a finished block lies right in the hoop"
        value={work.value ? isAligned(work.value.dressing, at) : false}
        onChange={(isOne) => change((was) => withAligned(was, at, isOne))}
      />
    </li>
  );
}

/** "4, 5 and 9" */
function listed(seams: readonly number[]): string {
  const all = [...new Set(seams)].sort((a, b) => a - b);
  return all.length < 2 ? all.join() : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
}

const nameAll = (seams: readonly number[]): string =>
  seams.length < 2 ? seams.map(lineTitle).join() : `Seams ${listed(seams)}`;

function whereAlong(share: number): string {
  if (share < 0.02) return 'at its start';
  if (share > 0.98) return 'at its end';
  return `${Math.round(100 * share)} % along`;
}
