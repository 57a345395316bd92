import { lengthOfText, lengthText, unit } from '../../state/units.js';
import { useTyped } from '../typed.js';

interface Field {
  readonly title: string;
  /** mm */
  readonly value: number;
  readonly least?: number;
  readonly most?: number;
  readonly onChange: (mm: number) => void;
}

/** A length that is typed, in the unit that the maker measures with. */
export function LengthField({ title, value, least = 0, most = 2000, onChange }: Field) {
  const typing = useTyped(lengthText(value), (text) => {
    const mm = lengthOfText(text);
    if (mm >= least && mm <= most) onChange(mm);
  });
  return (
    <label class="length">
      <span>{title}</span>
      <input type="number" step="any" inputMode="decimal" {...typing} />
      <span class="unit">{unit.value === 'mm' ? 'mm' : 'inch'}</span>
    </label>
  );
}
