import { withoutIndex } from '../../../src/stitches/copies.js';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { coordinateWritten, placeOf } from '../../state/bench/move-point.js';
import { benched, changeStitch, chosen } from '../../state/bench/on-bench.js';
import { tiesOf } from '../../state/bench/ties.js';
import { typed } from '../../state/bench/written.js';

/** The chosen point: where it lies, what is written there, and what moves with it. */
export function PointPart({ record }: { record: StitchRecord }) {
  const name = chosen.value === null ? null : withoutIndex(chosen.value);
  if (name === null || !Object.hasOwn(record.points, name)) {
    return (
      <section>
        <h2>Point</h2>
        <p class="hint">Touch a needle point, a bend or a loop on the sheet.</p>
      </section>
    );
  }
  const spots = benched.value?.unit?.spots ?? [];
  const spot = spots.find((one) => one.name === chosen.value);
  const place = placeOf(record, name);
  const others = [...tiesOf(record, spots, name).keys()].filter((other) => other !== name);
  const isFormula = place.some((written) => typeof written === 'string');
  return (
    <section>
      <h2>Point: {name}</h2>
      {([0, 1] as const).map((axis) => (
        <label key={axis} class="written">
          <span>{axis === 0 ? 'Along' : 'Across'}</span>
          <input
            type="text"
            spellcheck={false}
            value={String(place[axis])}
            onChange={({ currentTarget }) =>
              changeStitch((now) => coordinateWritten(now, name, axis, typed(currentTarget.value)))
            }
          />
          <output>{spot ? `${(axis === 0 ? spot.u : spot.v).toFixed(2)} mm` : ''}</output>
        </label>
      ))}
      <p class="hint">
        {isFormula &&
          'What is written stays when you drag: a plain share becomes another share, all else gets the distance added. '}
        {isFormula && 'Write a number to hold it in one place at every size. '}
        {'count' in record.points[name] && 'Its copies move alike. '}
        {others.length > 0 &&
          `It moves together with ${others.join(', ')}: they are one hole, or mirror each other.`}
      </p>
    </section>
  );
}
