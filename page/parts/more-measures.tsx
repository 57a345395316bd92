import type { Treatment } from '../../src/formats/dressing.js';
import type { Line } from '../core/messages.js';
import { change } from '../state/actions.js';
import { stitchOf } from '../state/line-facts.js';
import { isMoreOpen } from '../state/more-open.js';
import { withSameWork } from '../state/row-edits.js';
import { told } from '../state/work.js';
import { Fold } from './fold.js';
import { Accents } from './seam/accents.js';
import { GuideLine } from './seam/guide-line.js';
import { Laid } from './seam/laid.js';
import { Meetings } from './seam/meetings.js';
import { Parameters } from './seam/parameters.js';
import { Rows } from './seam/rows.js';
import { Way } from './seam/way.js';

/** The rest of what a line can be told, one step behind. */
export function MoreMeasures({ line, treatment }: { line: Line; treatment: Treatment }) {
  const [first] = treatment.rows;
  const stitch = stitchOf(first.stitch);
  return (
    <details
      class="more"
      open={isMoreOpen.value}
      onToggle={({ currentTarget }) => {
        isMoreOpen.value = currentTarget.open;
      }}
    >
      <summary>More about this seam</summary>
      {(stitch?.parameters.length ?? 0) > 2 && (
        <Fold title="Its own measures" now={stitch!.title}>
          <Parameters line={line} row={first} nth={0} but={['width', 'repeat']} />
        </Fold>
      )}
      <Rows line={line} treatment={treatment} />
      <Accents line={line} treatment={treatment} />
      <GuideLine line={line} treatment={treatment} />
      <Way line={line} treatment={treatment} />
      {line !== 'outline' && <Meetings line={line} />}
      <Laid line={line} treatment={treatment} />
      {line !== 'outline' && (
        <button
          type="button"
          onClick={() => {
            change((was) => withSameWork(was, treatment));
            told.value = 'All seams that are not pinned have this now';
          }}
        >
          Give this to every seam that is not pinned
        </button>
      )}
    </details>
  );
}
