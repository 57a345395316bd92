import { useState } from 'preact/hooks';
import type { ThreadChoice } from '../../../src/formats/dressing.js';
import { change } from '../../state/actions.js';
import { withOneMoreThread, withThreadChanged, withThreadColor } from '../../state/edits.js';
import { usesOf, withoutThread } from '../../state/thread-edits.js';
import { plural } from '../../state/words.js';
import { told, work } from '../../state/work.js';
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
          <ThreadItem key={`${t} ${threads.length}`} {...{ thread, t }} />
        ))}
      </ul>
      <button type="button" onClick={() => change((was) => withOneMoreThread(was, '#888888'))}>
        One more thread
      </button>
    </Fold>
  );
}

function ThreadItem({ thread: { name, hex, weight }, t }: { thread: ThreadChoice; t: number }) {
  const [isLeaving, leave] = useState(false);
  const isLast = (work.value?.dressing.threads.length ?? 0) < 2;
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
      <button
        type="button"
        class="leave"
        aria-label={`Take thread ${t + 1} away`}
        title={isLast ? 'The last thread stays' : `Take ${name} away`}
        aria-expanded={isLeaving}
        disabled={isLast}
        onClick={() => {
          if (!work.value || usesOf(work.value.dressing, t) > 0) leave(!isLeaving);
          else takeAway(t, t === 0 ? 1 : 0, name);
        }}
      >
        ×
      </button>
      {isLeaving && !isLast && <Leaving {...{ t, name }} onKeep={() => leave(false)} />}
    </li>
  );
}

/** Before a thread is taken away: which one takes its place. */
function Leaving({ t, name, onKeep }: { t: number; name: string; onKeep: () => void }) {
  const dressing = work.value!.dressing;
  return (
    <fieldset class="threads leaving">
      <legend>{`${name} is sewn in ${plural(usesOf(dressing, t), 'place')}. Sew it there in`}</legend>
      {dressing.threads.map(
        (other, k) =>
          k !== t && (
            <button
              key={`${k} ${other.hex}`}
              type="button"
              class="spool-choice"
              title={other.name}
              aria-label={`Sew them in ${other.name}, thread ${k + 1}`}
              onClick={() => takeAway(t, k, name)}
            >
              <span class="spool" style={{ background: other.hex }} />
            </button>
          ),
      )}
      <button type="button" class="quiet" onClick={onKeep}>
        Keep it
      </button>
    </fieldset>
  );
}

function takeAway(thread: number, instead: number, name: string): void {
  change((was) => withoutThread(was, thread, instead));
  told.value = `${name} is taken away`;
}
