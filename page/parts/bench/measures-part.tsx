import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { measureAdded, measureRemoved, measureWritten } from '../../state/bench/measures.js';
import { renamed } from '../../state/bench/names.js';
import { changeStitch } from '../../state/bench/on-bench.js';
import { typed } from '../../state/bench/written.js';
import { NewName } from './new-name.js';
import { WrittenField } from './written-field.js';

/** Quantities that are worked out once and used by name in what is written of points and legs. */
export function MeasuresPart({ record }: { record: StitchRecord }) {
  const measures = Object.entries(record.measures ?? {});
  return (
    <details class="fold">
      <summary>Worked out ({measures.length})</summary>
      <p class="hint">
        Each may use the sizes, <code>length</code> of a repeat, and what stands above it.
      </p>
      <ul class="parts">
        {measures.map(([name, written]) => (
          <li key={name} class="measure-of">
            <WrittenField
              title={`Quantity ${name} is called`}
              isBare
              value={name}
              onChange={(to) => changeStitch((now) => renamed(now, 'quantity', name, to))}
            />
            <WrittenField
              title={`${name} is`}
              isBare
              value={String(written)}
              onChange={(text) => changeStitch((now) => measureWritten(now, name, typed(text)))}
            />
            <button
              type="button"
              class="quiet"
              onClick={() => changeStitch((now) => measureRemoved(now, name))}
            >
              ✕<span class="unseen"> take {name} out</span>
            </button>
          </li>
        ))}
      </ul>
      <NewName
        title="a quantity that is worked out"
        hint="a name, such as half"
        onAdd={(name) => changeStitch((now) => measureAdded(now, name))}
      />
    </details>
  );
}
