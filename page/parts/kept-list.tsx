import { useEffect, useState } from 'preact/hooks';
import { goOnWith } from '../state/actions.js';
import { forget, notKept } from '../state/keep.js';
import { type KeptWork, keptWorks } from '../state/kept-works.js';
import { work } from '../state/work.js';

/** Other pieces of work that are kept in this browser. */
export function KeptList() {
  const [kept, setKept] = useState<readonly KeptWork[]>([]);
  const now = work.value?.id;
  const look = () => void keptWorks().then(setKept, () => setKept([]));
  useEffect(look, [now]);
  const others = kept.filter(({ id }) => id !== now);
  return (
    <section>
      {notKept.value && (
        <p class="hint">This browser keeps nothing; take the work itself away before you go.</p>
      )}
      {others.length > 0 && (
        <details class="more" onToggle={look}>
          <summary>Kept in this browser ({others.length})</summary>
          <ul class="kept">
            {others.map((one) => (
              <li key={one.id} class="row">
                <button type="button" onClick={() => void goOnWith(one)}>
                  <strong>{one.work.dressing.block.file.replace(/^.*[/\\]/, '')}</strong>
                  <span>{new Date(one.changedAt).toLocaleString()}</span>
                </button>
                <button
                  type="button"
                  class="quiet"
                  onClick={async () => {
                    await forget(one);
                    setKept(await keptWorks());
                  }}
                >
                  Forget it
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
