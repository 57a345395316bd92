import { useState } from 'preact/hooks';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { joinAdded, joinRemoved } from '../../state/bench/joins.js';
import { changeStitch } from '../../state/bench/on-bench.js';
import { POINTS } from './known-names.js';
import { WrittenField } from './written-field.js';

/** Which holes of a repeat are holes of the next one: there the thread goes on without a jump, and closes round a ring. */
export function JoinsPart({ record }: { record: StitchRecord }) {
  const [here, setHere] = useState('');
  const [next, setNext] = useState('');
  const joins = Object.entries(record.joins);
  const isGlide = record.symmetry === 'glide';
  const { closing = [] } = record;
  return (
    <details class="fold">
      <summary>How repeats join ({joins.length})</summary>
      {joins.length === 0 && (
        <p class="hint">
          No hole is shared with the next repeat: it has to stand apart, or its thread would be torn.
        </p>
      )}
      <ul class="parts">
        {joins.map(([from, to]) => (
          <li key={from}>
            <span>
              <strong>{from}</strong> is the next one’s <strong>{to}</strong>
            </span>
            <button type="button" class="quiet" onClick={() => changeStitch((now) => joinRemoved(now, from))}>
              Part<span class="unseen"> {from} from the next repeat</span>
            </button>
          </li>
        ))}
      </ul>
      <WrittenField title="Point here" value={here} list={POINTS} onChange={(text) => setHere(text.trim())} />
      <WrittenField title="Next one’s" value={next} list={POINTS} onChange={(text) => setNext(text.trim())} />
      <button
        type="button"
        disabled={here === '' || next === ''}
        onClick={() => {
          changeStitch((now) => joinAdded(now, here, next));
          setHere('');
          setNext('');
        }}
      >
        Join them
      </button>
      <p class="hint">
        The point here is laid where the next repeat has its own
        {isGlide && ', which has left and right exchanged'}. Joined holes close a ring without a start.
      </p>
      <WrittenField
        title="Closing"
        value={closing.join(', ')}
        onChange={(text) =>
          changeStitch(({ closing: _, ...rest }) => {
            const legs = text.split(',').flatMap((one) => one.trim() || []);
            return legs.length ? { ...rest, closing: legs } : rest;
          })
        }
      />
      <p class="hint">Legs that are worked once more where a row ends, in this order.</p>
    </details>
  );
}
