import type { PlaceRecord, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { renamed } from '../../state/bench/names.js';
import { benched, changeStitch, chosen } from '../../state/bench/on-bench.js';
import { freeSeatAdded, seatAdded, seatRemoved, seatWritten } from '../../state/bench/seats.js';
import { typed } from '../../state/bench/written.js';
import { POINTS } from './known-names.js';
import { WrittenField } from './written-field.js';

/** Where accents can sit: on points, or at places of their own. */
export function SeatsPart({ record }: { record: StitchRecord }) {
  const point = benched.value?.unit?.spots.find(({ name }) => name === chosen.value)?.name;
  const seats = Object.entries(record.seats ?? {});
  return (
    <details class="fold" open>
      <summary>Seats for knots and beads ({seats.length})</summary>
      <ul class="parts">
        {seats.map(([name, seat]) => (
          <li key={name}>
            <WrittenField
              title="Called"
              of={`seat ${name}`}
              value={name}
              onChange={(to) => changeStitch((now) => renamed(now, 'seat', name, to))}
            />
            {typeof seat === 'string' ? (
              <WrittenField
                title="On point"
                of={`seat ${name}`}
                value={seat}
                list={POINTS}
                onChange={(to) => to.trim() && changeStitch((now) => seatWritten(now, name, to.trim()))}
              />
            ) : (
              <FreePlace name={name} seat={seat} />
            )}
            <button type="button" class="quiet" onClick={() => changeStitch((now) => seatRemoved(now, name))}>
              Take out<span class="unseen"> seat {name}</span>
            </button>
          </li>
        ))}
      </ul>
      <div class="row wrap">
        <button
          type="button"
          disabled={point === undefined}
          onClick={() => point !== undefined && changeStitch((now) => seatAdded(now, point))}
        >
          {point === undefined ? 'Choose a point for a seat' : `A seat on ${point}`}
        </button>
        <button type="button" onClick={() => changeStitch(freeSeatAdded)}>
          A seat on no point
        </button>
      </div>
    </details>
  );
}

function FreePlace({ name, seat: [u, v] }: { name: string; seat: PlaceRecord }) {
  return (
    <>
      <WrittenField
        title="Along"
        of={`seat ${name}`}
        value={String(u)}
        onChange={(text) => changeStitch((now) => seatWritten(now, name, [typed(text), v]))}
      />
      <WrittenField
        title="Across"
        of={`seat ${name}`}
        value={String(v)}
        onChange={(text) => changeStitch((now) => seatWritten(now, name, [u, typed(text)]))}
      />
    </>
  );
}
