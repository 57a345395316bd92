import { CORNER_MANNERS, type Treatment } from '../../../src/formats/dressing.js';
import type { Line } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { withTreatment } from '../../state/edits.js';
import { bothEnds } from '../../state/end-edits.js';
import { stitchOf } from '../../state/line-facts.js';
import { CORNERS, ENDS } from '../../state/manners.js';
import { lookedAt } from '../../state/more-open.js';
import { work } from '../../state/work.js';
import { Choice } from '../choice.js';
import { Fold } from '../fold.js';
import { EndChoice } from './end-choice.js';

/** What a seam's two ends are called where their manner is chosen. */
const ENDS_OF = [
  ['Its start', 0],
  ['Its end', 1],
] as const;

/** How a line is gone along: its ends, its corners, to which hand, which way. */
export function Way({ line, treatment }: { line: Line; treatment: Treatment }) {
  const { ends, side, reverse, corner } = treatment;
  const set = (part: Partial<Treatment>) =>
    change((was) => withTreatment(was, line, (one) => ({ ...one, ...part })));
  const own = stitchOf(treatment.rows[0].stitch)?.corner ?? 'turn';
  const block = work.value?.dressing.ends ?? 'tuck';
  const made = bothEnds(ends);
  return (
    <Fold
      onToggle={lookedAt('way')}
      title="Ends, corners, side"
      now={[...new Set(made.map((manner) => ENDS[manner ?? block]))].join(' · ')}
    >
      {line !== 'outline' &&
        ENDS_OF.map(([title, which]) => <EndChoice key={title} {...{ title, line, treatment, which }} />)}
      <Choice
        title="At a sharp corner"
        value={corner ?? ''}
        options={[
          ['', `its own: ${CORNERS[own]}`],
          ...CORNER_MANNERS.map((manner) => [manner, CORNERS[manner]] as const),
        ]}
        onChoose={(manner) =>
          change((was) =>
            withTreatment(was, line, ({ corner: _, ...one }) =>
              manner ? { ...one, corner: manner as Treatment['corner'] } : one,
            ),
          )
        }
      />
      <Choice
        title="Side"
        value={side ?? ''}
        options={[
          ['', 'the upper patch'],
          ['left', 'left'],
          ['right', 'right'],
        ]}
        onChoose={(hand) => set({ side: (hand || null) as Treatment['side'] })}
      />
      <Choice
        title="Grows"
        value={reverse ? 'back' : 'on'}
        options={[
          ['on', 'with the seam'],
          ['back', 'against it'],
        ]}
        onChoose={(way) => set({ reverse: way === 'back' })}
      />
    </Fold>
  );
}
