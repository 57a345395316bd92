import { familiesOf } from '../../state/find-offers.js';
import { offers } from '../../state/work.js';

/** All stitches, family by family, to choose one of. */
export function StitchOptions() {
  return (
    <>
      {familiesOf(offers.value.filter(({ shelf }) => shelf === 'stitch')).map(({ family, offers: of }) => (
        <optgroup key={family} label={family}>
          {of.map(({ name, title }) => (
            <option key={name} value={name}>
              {title}
            </option>
          ))}
        </optgroup>
      ))}
    </>
  );
}
