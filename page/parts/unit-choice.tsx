import { measureIn, type Unit, unit } from '../state/units.js';
import { Choice } from './choice.js';

/** Millimeters or inches. */
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
        onChoose={(value) => measureIn(value as Unit)}
      />
    </section>
  );
}
