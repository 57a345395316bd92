import { withoutIndex } from '../../../src/stitches/copies.js';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { copiesOf, pointCopied } from '../../state/bench/copied.js';
import { coordinateWritten, placeOf } from '../../state/bench/move-point.js';
import { canBeCalled, renamed } from '../../state/bench/names.js';
import { benched, changeStitch, chosen } from '../../state/bench/on-bench.js';
import { tiesOf } from '../../state/bench/ties.js';
import { typed } from '../../state/bench/written.js';
import { fineLengthIn } from '../../state/units.js';
import { WrittenField } from './written-field.js';

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
  const copies = copiesOf(record, name);
  return (
    <section>
      <h2>Point: {chosen.value}</h2>
      <WrittenField title="Called" value={name} onChange={(to) => call(record, name, to)} />
      {([0, 1] as const).map((axis) => (
        <WrittenField
          key={axis}
          title={axis === 0 ? 'Along' : 'Across'}
          value={String(place[axis])}
          note={spot ? fineLengthIn(axis === 0 ? spot.u : spot.v) : ''}
          onChange={(text) => changeStitch((now) => coordinateWritten(now, name, axis, typed(text)))}
        />
      ))}
      <WrittenField
        title="Copies"
        value={copies === null ? '' : String(copies)}
        onChange={(text) => copy(name, text)}
      />
      <p class="hint">
        {copies === null
          ? 'Empty for one; else how many: a number, or a size that counts. '
          : 'Its copies move alike; i counts them from 0 in what is written along and across. '}
        {isFormula &&
          'What is written stays when you drag: a plain share becomes another share, all else gets the distance added. '}
        {isFormula && 'Write a number to hold it in one place at every size. '}
        {others.length > 0 &&
          `It moves together with ${others.join(', ')}: they are one hole, or mirror each other.`}
      </p>
    </section>
  );
}

function call(record: StitchRecord, was: string, to: string): void {
  if (!canBeCalled(record, 'point', to.trim())) return;
  changeStitch((now) => renamed(now, 'point', was, to));
  chosen.value = to.trim() + (chosen.value ?? '').slice(was.length);
}

function copy(name: string, text: string): void {
  const count = text.trim() === '' ? null : typed(text);
  changeStitch((now) => pointCopied(now, name, count));
  chosen.value = count === null ? name : `${name}[0]`;
}
