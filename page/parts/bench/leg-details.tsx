import type { LegRecord, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { chosenLeg } from '../../state/bench/chosen-leg.js';
import { legLetOut, legsCopied, legTakenIn } from '../../state/bench/copied.js';
import { type Where, whereOf, workedWhere } from '../../state/bench/endings.js';
import {
  type Bend,
  bendOf,
  bendsWith,
  bentBy,
  fieldWritten,
  listed,
  pointFields,
  sizeField,
  turnedInto,
} from '../../state/bench/leg-fields.js';
import {
  KINDS,
  type LegPlace,
  legChanged,
  legRemoved,
  legShifted,
  legsOf,
  PASSES,
  passesOf,
  pointsOfLeg,
  withPasses,
} from '../../state/bench/legs.js';
import { canBeCalled, renamed } from '../../state/bench/names.js';
import { benched, changeStitch, chosen } from '../../state/bench/on-bench.js';
import { bendAdded, canBend } from '../../state/bench/points.js';
import { onThread, threadOf, threadsOf } from '../../state/bench/threads.js';
import { typed } from '../../state/bench/written.js';
import { Choice } from '../choice.js';
import { LEGS, POINTS } from './known-names.js';
import { WrittenField } from './written-field.js';

const WHERE = [
  ['repeat', 'in every repeat'],
  ['again', 'in every repeat, once more at the end'],
  ['end', 'only where a row ends'],
] as const;

/** All that a leg's file says of it. */
export function LegDetails({ record, place }: { record: StitchRecord; place: LegPlace }) {
  const { leg } = place;
  const change = (edit: (leg: LegRecord) => LegRecord) => changeStitch((now) => legChanged(now, place, edit));
  const write = (field: string, value: unknown) => change((one) => fieldWritten(one, field, value));
  const size = sizeField(leg);
  const bend = bendOf(leg);
  const bends = bendsWith(leg);
  const threads = threadsOf(record);
  return (
    <div class="details">
      <WrittenField title="Called" value={leg.name} onChange={(name) => call(record, leg.name, name)} />
      <Choice
        title="Kind"
        value={leg.kind}
        options={KINDS}
        onChoose={(kind) => change((one) => turnedInto(one, kind as LegRecord['kind']))}
      />
      {pointFields(leg).map(({ field, title, value }) => (
        <WrittenField
          key={field}
          title={title}
          value={value}
          list={POINTS}
          onChange={(name) => write(field, name.trim())}
        />
      ))}
      {bend && bends.length > 1 && (
        <Choice
          title="Bent"
          value={bend.by}
          options={[
            ['via', 'pulled by points'],
            ['through', 'led through points'],
          ]}
          onChoose={(by) => change((one) => bentBy(one, by as Bend, bend.points))}
        />
      )}
      {bends.length > 0 && (
        <WrittenField
          title={bend?.by === 'through' ? 'Through' : leg.kind === 'under' ? 'By way of' : 'Pulled by'}
          value={bend?.points.join(', ') ?? ''}
          list={POINTS}
          onChange={(text) => change((one) => bentBy(one, bend?.by ?? 'via', listed(text)))}
        />
      )}
      {size && (
        <WrittenField
          title={leg.kind === 'knot' ? 'Across' : 'Wide'}
          value={String(size.value)}
          onChange={(text) => write(size.field, typed(text))}
        />
      )}
      {leg.kind === 'under' && (
        <WrittenField
          title="Beneath"
          value={leg.beneath ?? ''}
          list={LEGS}
          onChange={(name) => write('beneath', name.trim())}
        />
      )}
      <Passes leg={leg} onChange={change} />
      {threads.length > 1 && (
        <Choice
          title="Thread"
          value={threadOf(leg, record)}
          options={threads.map((name) => [name, name])}
          onChoose={(name) => change((one) => onThread(one, name, record))}
        />
      )}
      <Choice
        title="Worked"
        value={whereOf(record, leg)}
        options={WHERE}
        onChoose={(where) => changeStitch((now) => workedWhere(now, place, where as Where))}
      />
      <WrittenField
        title="Stiff at"
        value={leg.keepsShapeAt ?? ''}
        list={POINTS}
        onChange={(name) => write('keepsShapeAt', name.trim())}
      />
      <p class="hint">
        {leg.keepsShapeAt
          ? 'It keeps its shape about that point where the seam bends, as a flower does.'
          : 'It bends with the seam. Name a point to keep its shape about it, as a flower does.'}
      </p>
      <Times record={record} place={place} />
      <Moves record={record} place={place} />
    </div>
  );
}

function Passes({
  leg,
  onChange,
}: {
  leg: LegRecord;
  onChange: (edit: (leg: LegRecord) => LegRecord) => void;
}) {
  const isUnder = leg.kind === 'under';
  const most = Math.max(6, passesOf(leg));
  const counts = Array.from({ length: most + 1 }, (_, k) => k).filter((k) => k > 0 || isUnder);
  return (
    <Choice
      title="Passes"
      value={String(passesOf(leg))}
      options={counts.map((k) => [
        String(k),
        k === 0 ? 'only where needed' : `${k} where a row has ${PASSES}`,
      ])}
      onChoose={(value) => onChange((one) => withPasses(one, Number(value)))}
    />
  );
}

/** How many times over it is worked: alone, or with others as a set. */
function Times({ record, place: { at, among } }: { record: StitchRecord; place: LegPlace }) {
  const entry = record.legs[at];
  const isSet = 'legs' in entry;
  const isAfterSet = at > 0 && 'legs' in record.legs[at - 1];
  return (
    <>
      <WrittenField
        title="Times"
        value={isSet ? String(entry.count) : ''}
        note={isSet && entry.legs.length > 1 ? `${entry.legs.length} legs in turn` : undefined}
        onChange={(text) =>
          changeStitch((now) => legsCopied(now, at, text.trim() === '' ? null : typed(text)))
        }
      />
      <p class="hint">
        Empty for once; else how often: a number, or a size that counts. <code>tip[i]</code> is then each
        copy’s own point, <code>tip[i + 1]</code> the next one’s.
      </p>
      {!isSet && isAfterSet && (
        <button type="button" onClick={() => changeStitch((now) => legTakenIn(now, at))}>
          With the copies before it
        </button>
      )}
      {isSet && entry.legs.length > 1 && (
        <button type="button" onClick={() => changeStitch((now) => legLetOut(now, at, among!))}>
          Once, after the copies
        </button>
      )}
    </>
  );
}

function Moves({ record, place }: { record: StitchRecord; place: LegPlace }) {
  const { at } = place;
  return (
    <div class="row wrap">
      <button
        type="button"
        disabled={at === 0}
        onClick={() => changeStitch((now) => legShifted(now, at, -1))}
      >
        Sooner
      </button>
      <button
        type="button"
        disabled={at === record.legs.length - 1}
        onClick={() => changeStitch((now) => legShifted(now, at, 1))}
      >
        Later
      </button>
      {canBend(place) && (
        <button type="button" onClick={() => bend(place)}>
          Bend it
        </button>
      )}
      <button
        type="button"
        class="quiet"
        disabled={legsOf(record).length === 1}
        onClick={() => changeStitch((now) => legRemoved(now, place))}
      >
        Take it out
      </button>
    </div>
  );
}

function call(record: StitchRecord, was: string, name: string): void {
  if (!canBeCalled(record, 'leg', name.trim())) return;
  changeStitch((now) => renamed(now, 'leg', was, name));
  chosenLeg.value = name.trim();
  // the leg of the new name is another in the list: who types goes on at it
  requestAnimationFrame(() => document.querySelector<HTMLElement>('.legs [aria-expanded="true"]')?.focus());
}

function bend(place: LegPlace): void {
  const spots = benched.value?.unit?.spots ?? [];
  const [from, to] = pointsOfLeg(place.leg).map((name) =>
    spots.find((spot) => spot.name === name || spot.name.startsWith(`${name}[`)),
  );
  if (!from || !to) return;
  changeStitch((now) => {
    const { record, name } = bendAdded(now, place, [(from.u + to.u) / 2, (from.v + to.v) / 2]);
    chosen.value = name;
    return record;
  });
}
