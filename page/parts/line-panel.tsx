import type { Line } from '../core/messages.js';
import { lineTitle } from '../state/words.js';
import { touched } from '../state/work.js';
import { Measures } from './measures.js';
import { Shelf } from './shelf.js';

/** What the touched line has, and what it could have. */
export function LinePanel({ line }: { line: Line }) {
  return (
    <>
      <div class="panel-head">
        <h2>{lineTitle(line)}</h2>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            touched.value = null;
          }}
        >
          Done
        </button>
      </div>
      <Measures line={line} />
      <Shelf line={line} />
    </>
  );
}
