import { useRef } from 'preact/hooks';
import { takeAway, takenOf } from '../state/take-away.js';
import { work } from '../state/work.js';

/** What the work can be taken away as. */
export function TakeAway() {
  const details = useRef<HTMLDetailsElement>(null);
  const kinds = work.value ? takenOf(work.value) : [];
  return (
    <details class="take-away" ref={details}>
      <summary class="button main">To the machine</summary>
      <ul>
        {kinds.map(({ kind, title, about }) => (
          <li key={kind}>
            <button
              type="button"
              onClick={() => {
                details.current!.open = false;
                void takeAway(kind);
              }}
            >
              <strong>{title}</strong>
              <span>{about}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
