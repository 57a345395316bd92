import { change } from '../state/actions.js';
import { withOneMoreThread, withThreadColor } from '../state/edits.js';
import { work } from '../state/work.js';
import { Spools } from './spools.js';

interface Threading {
  /** index of the thread that is in use */
  readonly chosen: number;
  readonly onChoose: (thread: number) => void;
}

/** The threads of the work as spools; the chosen one can be changed in color, wherever it is used. */
export function Threads({ chosen, onChoose }: Threading) {
  const threads = work.value?.dressing.threads ?? [];
  return (
    <Spools title="Thread" chosen={chosen} onChoose={onChoose}>
      <span class="about-threads">
        <label class="more-thread">
          <input
            type="color"
            value="#888888"
            onChange={({ currentTarget }) => {
              change((was) => withOneMoreThread(was, currentTarget.value));
              onChoose(threads.length);
            }}
          />
          Another thread
        </label>
        <label class="recolor">
          Its color
          <input
            type="color"
            value={threads[chosen]?.hex ?? '#000000'}
            onInput={({ currentTarget }) =>
              change((was) => withThreadColor(was, chosen, currentTarget.value), `color ${chosen}`)
            }
          />
        </label>
      </span>
    </Spools>
  );
}
