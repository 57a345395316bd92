import type { Line, MeetingPlace } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { isAligned, withAligned } from '../../state/block-edits.js';
import { sayOf } from '../../state/meeting-edits.js';
import { lineTitle } from '../../state/words.js';
import { work } from '../../state/work.js';
import { Choice } from '../choice.js';
import { Tick } from '../tick.js';

/** What the maker can say of a place where a seam meets others. */
export function MeetingChoices({ line, meeting }: { line: Line; meeting: MeetingPlace }) {
  const { at, through, runsOn, joins, split, said } = meeting;
  const whose = (id: number) => (id === line ? 'this seam' : lineTitle(id).toLowerCase());
  const byItself = through === null ? 'nobody' : whose(through);
  return (
    <>
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
    </>
  );
}
