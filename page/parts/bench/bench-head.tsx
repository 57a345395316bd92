import { useRef } from 'preact/hooks';
import { lookForDrafts } from '../../state/bench/drafts.js';
import { handOut, saveStitch } from '../../state/bench/library.js';
import {
  canRedoStitch,
  canUndoStitch,
  draft,
  isBenchOpen,
  ownStitches,
  redoStitch,
  undoStitch,
} from '../../state/bench/on-bench.js';
import { textOf } from '../../state/bench/text.js';
import { BackAndForth } from '../back-and-forth.js';
import { Start } from './start.js';

/** The bar above the bench. */
export function BenchHead() {
  const shelf = useRef<HTMLDetailsElement>(null);
  const now = draft.value;
  const text = now && textOf(now.record);
  const isSaved = ownStitches.value.some((one) => one.name === now?.name && one.text === text);
  return (
    <header class="head">
      <h1>
        Stitch bench <span class="file">{now?.record.title}</span>
        {now && <span class="state">{isSaved ? 'saved' : 'not saved yet'}</span>}
      </h1>
      {now && (
        <details
          class="take-away"
          ref={shelf}
          onToggle={({ currentTarget }) => currentTarget.open && void lookForDrafts().catch(() => [])}
        >
          <summary class="button">Another stitch</summary>
          <div class="drawer">
            <Start
              onChosen={() => {
                shelf.current!.open = false;
              }}
            />
          </div>
        </details>
      )}
      {now && (
        <>
          <BackAndForth
            canUndo={canUndoStitch.value}
            canRedo={canRedoStitch.value}
            undo={undoStitch}
            redo={redoStitch}
          />
          <button type="button" onClick={() => handOut({ name: now.name, text: text! })}>
            Its file
          </button>
          <button type="button" class="main" onClick={() => void saveStitch()}>
            Save
          </button>
        </>
      )}
      <button
        type="button"
        onClick={() => {
          isBenchOpen.value = false;
        }}
      >
        To the block
      </button>
    </header>
  );
}
