import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { benched, changeStitch, chosen } from '../../state/bench/on-bench.js';
import { seatAdded, seatRemoved } from '../../state/bench/seats.js';

/** Where accents can sit. */
export function SeatsPart({ record }: { record: StitchRecord }) {
  const point = benched.value?.unit?.spots.find(({ name }) => name === chosen.value)?.name;
  return (
    <section>
      <h2>Seats for knots and beads</h2>
      <ul class="seats">
        {Object.entries(record.seats ?? {}).map(([name, seat]) => (
          <li key={name}>
            <span>
              {name}{' '}
              <span class="aside">{typeof seat === 'string' ? `on ${seat}` : `at ${seat.join(', ')}`}</span>
            </span>
            <button type="button" class="quiet" onClick={() => changeStitch((now) => seatRemoved(now, name))}>
              Take out<span class="unseen"> seat {name}</span>
            </button>
          </li>
        ))}
      </ul>
      <button
        type="button"
        disabled={point === undefined}
        onClick={() => point !== undefined && changeStitch((now) => seatAdded(now, point))}
      >
        {point === undefined ? 'Choose a point for a seat' : `A seat on ${point}`}
      </button>
    </section>
  );
}
