import type { Treatment } from '../../../src/formats/dressing.js';
import type { Line } from '../../core/messages.js';
import { withOneMoreAccent } from '../../state/accent-edits.js';
import { change } from '../../state/actions.js';
import { lookedAt } from '../../state/more-open.js';
import { seatsOf } from '../../state/seats.js';
import { plural } from '../../state/words.js';
import { figures } from '../../state/work.js';
import { Fold } from '../fold.js';
import { AccentItem } from './accent-item.js';

/** What sits on the seats of a line's rows, and one more. */
export function Accents({ line, treatment }: { line: Line; treatment: Treatment }) {
  const { accents = [] } = treatment;
  const seats = seatsOf(treatment, 0);
  return (
    <Fold
      onToggle={lookedAt('accents')}
      title="Accents"
      now={accents.length === 0 ? 'none' : plural(accents.length, 'accent')}
    >
      {seats.length === 0 && <p class="aside">This stitch has no seats that an accent could sit on.</p>}
      <ol class="pieces">
        {accents.map((accent, k) => (
          <AccentItem
            key={`${k} ${accents.length}`}
            line={line}
            treatment={treatment}
            accent={accent}
            nth={k}
          />
        ))}
      </ol>
      {seats.length > 0 && (
        <select
          class="adding"
          aria-label="Add an accent"
          value=""
          onChange={({ currentTarget }) => {
            const figure = figures.value.find(({ name }) => name === currentTarget.value);
            if (figure) change((was) => withOneMoreAccent(was, line, seats[0], figure));
            currentTarget.value = '';
          }}
        >
          <option value="">Add an accent …</option>
          {figures.value.map(({ name, title }) => (
            <option key={name} value={name}>
              {title}
            </option>
          ))}
        </select>
      )}
    </Fold>
  );
}
