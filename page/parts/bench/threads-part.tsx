import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { renamed } from '../../state/bench/names.js';
import { changeStitch } from '../../state/bench/on-bench.js';
import { legsInThread, threadAdded, threadRemoved, threadsOf } from '../../state/bench/threads.js';
import { plural } from '../../state/words.js';
import { NewName } from './new-name.js';
import { WrittenField } from './written-field.js';

/** The threads it is worked in, each a color stop of its own, in the order sewn. */
export function ThreadsPart({ record }: { record: StitchRecord }) {
  const threads = threadsOf(record);
  return (
    <details class="fold">
      <summary>Threads ({threads.length})</summary>
      {threads.length === 1 && (
        <p class="hint">Worked in one thread. With another, every leg says which it is in.</p>
      )}
      {threads.length > 1 && (
        <ul class="parts">
          {threads.map((name) => (
            <li key={name}>
              <WrittenField
                title={plural(legsInThread(record, name), 'leg')}
                value={name}
                onChange={(to) => changeStitch((now) => renamed(now, 'thread', name, to))}
              />
              <button
                type="button"
                class="quiet"
                onClick={() => changeStitch((now) => threadRemoved(now, name))}
              >
                Take out<span class="unseen"> thread {name}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <NewName
        title="another thread"
        hint="another, such as lacing"
        onAdd={(name) => changeStitch((now) => threadAdded(now, name))}
      />
    </details>
  );
}
