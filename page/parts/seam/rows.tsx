import type { Treatment } from '../../../src/formats/dressing.js';
import type { Line } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { stitchOf } from '../../state/line-facts.js';
import { lookedAt } from '../../state/more-open.js';
import { MOST_ROWS, withOneMoreRow } from '../../state/row-edits.js';
import { plural } from '../../state/words.js';
import { Fold } from '../fold.js';
import { RowItem } from './row-item.js';
import { StitchOptions } from './stitch-options.js';

/** The rows of a line, and one more. */
export function Rows({ line, treatment: { rows } }: { line: Line; treatment: Treatment }) {
  return (
    <Fold
      onToggle={lookedAt('rows')}
      title="Rows"
      now={rows.length === 1 ? 'one' : plural(rows.length, 'row')}
    >
      <ol class="pieces">
        {rows.map((row, r) => (
          <RowItem key={`${r} ${rows.length}`} line={line} rows={rows} row={row} nth={r} />
        ))}
      </ol>
      {rows.length < MOST_ROWS && (
        <select
          class="adding"
          aria-label="Add a row of"
          value=""
          onChange={({ currentTarget }) => {
            const stitch = stitchOf(currentTarget.value);
            if (stitch) change((was) => withOneMoreRow(was, line, stitch));
            currentTarget.value = '';
          }}
        >
          <option value="">Add a row of …</option>
          <StitchOptions />
        </select>
      )}
    </Fold>
  );
}
