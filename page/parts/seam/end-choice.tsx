import type { Manner, Treatment } from '../../../src/formats/dressing.js';
import type { Line } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { bothEnds, withEnd } from '../../state/end-edits.js';
import { ENDS } from '../../state/manners.js';
import { work } from '../../state/work.js';
import { Choice } from '../choice.js';

interface Ending {
  readonly title: string;
  readonly line: Line;
  readonly treatment: Treatment;
  /** its start or its end */
  readonly which: 0 | 1;
}

/** How one end of a line is made. */
export function EndChoice({ title, line, treatment, which }: Ending) {
  const block = work.value?.dressing.ends ?? 'tuck';
  return (
    <Choice
      title={title}
      value={bothEnds(treatment.ends)[which] ?? ''}
      options={[
        ['', `as the block: ${ENDS[block]}`],
        ...Object.entries(ENDS).map(([key, told]) => [key, told] as const),
      ]}
      onChoose={(manner) => change((was) => withEnd(was, line, which, (manner || null) as Manner | null))}
    />
  );
}
