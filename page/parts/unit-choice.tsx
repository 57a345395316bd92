import type { LengthUnit } from '../../src/geometry/units.js';
import { calibrated, measureScreen } from '../state/true-size.js';
import { measureIn, unit } from '../state/units.js';
import { Choice } from './choice.js';

/** Millimeters or inches; and how large they are on this screen. */
export function UnitChoice() {
  return (
    <section>
      <Choice
        title="Measured in"
        value={unit.value}
        options={[
          ['mm', 'millimeters'],
          ['inch', 'inches'],
        ]}
        onChoose={(value) => measureIn(value as LengthUnit)}
      />
      {calibrated.value && (
        <button type="button" class="quiet" onClick={measureScreen}>
          Measure the screen anew
        </button>
      )}
    </section>
  );
}
