import type { ThreadChoice } from '../../../src/formats/dressing.js';
import { change } from '../../state/actions.js';
import { withOneMoreThread, withThreadChanged, withThreadColor } from '../../state/edits.js';
import { plural } from '../../state/words.js';
import { work } from '../../state/work.js';
import { Fold } from '../fold.js';
import { useTyped } from '../typed.js';

/** Threads as they are commonly sold, by ticket number: a higher one is finer. Common practice. */
const WEIGHTS = ['No. 60', 'No. 40', 'No. 30', 'No. 12'];

/** The threads of the work: what they are called, their color, how thick they are. */
export function ThreadList() {
  const threads = work.value?.dressing.threads ?? [];
  return (
    <Fold title="Threads" now={plural(threads.length, 'thread')}>
      <ul class="thread-list">
        {threads.map((thread, t) => (
          <ThreadItem key={t} {...{ thread, t }} />
        ))}
      </ul>
      <button type="button" onClick={() => change((was) => withOneMoreThread(was, '#888888'))}>
        One more thread
      </button>
    </Fold>
  );
}

function ThreadItem({ thread: { name, hex, weight }, t }: { thread: ThreadChoice; t: number }) {
  const naming = useTyped(name, (text) => {
    const wanted = text.trim();
    if (wanted) change((was) => withThreadChanged(was, t, { name: wanted }));
  });
  return (
    <li>
      <input
        type="color"
        class="swatch"
        aria-label={`Color of thread ${t + 1}`}
        value={hex}
        onInput={({ currentTarget }) =>
          change((was) => withThreadColor(was, t, currentTarget.value), `color ${t}`)
        }
      />
      <input type="text" aria-label={`Name of thread ${t + 1}`} {...naming} />
      <select
        aria-label={`Weight of thread ${t + 1}`}
        value={weight}
        onChange={({ currentTarget }) =>
          change((was) => withThreadChanged(was, t, { weight: currentTarget.value }))
        }
      >
        {[...new Set([...WEIGHTS, weight])].map((one) => (
          <option key={one} value={one}>
            {one}
          </option>
        ))}
      </select>
    </li>
  );
}
