import type { Row } from '../../../src/formats/dressing.js';
import type { Line } from '../../core/messages.js';
import { change } from '../../state/actions.js';
import { withSize } from '../../state/edits.js';
import { stitchOf } from '../../state/line-facts.js';
import { lengthIn } from '../../state/units.js';
import { Measure } from '../measure.js';

interface Told {
  readonly line: Line;
  readonly row: Row;
  readonly nth: number;
  /** sizes that stand elsewhere */
  readonly but: readonly string[];
}

/** What can be told of the stitch of a row, as its file declares it. */
export function Parameters({ line, row, nth, but }: Told) {
  const told = (stitchOf(row.stitch)?.parameters ?? []).filter(({ name }) => !but.includes(name));
  return (
    <>
      {told.map(({ name, title, unit, min, max, default: usual }) => (
        <Measure
          key={name}
          title={title}
          value={row.parameters[name] ?? usual}
          min={min}
          max={max}
          step={unit === 'count' || unit === 'degree' ? 1 : 0.05}
          show={(value) =>
            unit === 'mm'
              ? lengthIn(value)
              : `${Math.round(value * 100) / 100}${unit === 'degree' ? '°' : ''}`
          }
          onChange={(value) =>
            change((was) => withSize(was, line, nth, name, value), `${name} ${line} row ${nth}`)
          }
        />
      ))}
    </>
  );
}
