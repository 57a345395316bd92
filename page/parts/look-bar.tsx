import type { Looked } from '../core/messages.js';
import { looked } from '../state/look.js';
import { calibrated, toTrueSize } from '../state/true-size.js';
import { isFitted, nearer } from '../state/view.js';

const LOOKS: readonly (readonly [Looked | 'thread', string])[] = [
  ['thread', 'Thread as it lies'],
  ['density', 'How dense it is'],
  ['layers', 'Thread over thread'],
  ['stops', 'Which stop sews what'],
  ['holes', 'Needle holes'],
  ['bare', 'Bare seam'],
  ['contrast', 'Thread against fabric'],
  ['numbers', 'Numbers'],
];

/** How the block is looked at. */
export function LookBar() {
  return (
    <section class="look-bar" aria-label="Looking">
      <button type="button" aria-label="Further away" title="Key −" onClick={() => nearer(1 / 1.3)}>
        −
      </button>
      <button type="button" aria-label="Nearer" title="Key +" onClick={() => nearer(1.3)}>
        +
      </button>
      <button
        type="button"
        aria-pressed={isFitted.value}
        title="Key 0"
        onClick={() => {
          isFitted.value = true;
        }}
      >
        Whole block
      </button>
      <button
        type="button"
        title={calibrated.value ? 'As large as it is sewn' : 'Asks once to measure your screen'}
        onClick={toTrueSize}
      >
        True size
      </button>
      <label>
        <span class="unseen">What is looked at</span>
        <select
          value={looked.value}
          onChange={({ currentTarget }) => {
            looked.value = currentTarget.value as Looked | 'thread';
          }}
        >
          {LOOKS.map(([value, told]) => (
            <option key={value} value={value}>
              {told}
            </option>
          ))}
        </select>
      </label>
    </section>
  );
}
