import { mixAgain, openFiles, redo, undo } from '../state/actions.js';
import { isBenchOpen } from '../state/bench/on-bench.js';
import { beginDrawing } from '../state/drawing/board.js';
import { givenFiles } from '../state/given-files.js';
import { canRedo, canUndo, work } from '../state/work.js';
import { DrawButton } from './drawing/draw-panel.js';
import { TakeAway } from './take-away.js';

/** The bar above: what is open, one step back and forth, the large button that mixes, and what to take away. */
export function Head() {
  const file = work.value?.dressing.block.file.replace(/^.*[/\\]/, '');
  return (
    <header class="head">
      <h1>
        Seamwright <span class="file">{file}</span>
      </h1>
      <label class="button">
        Open a block
        <input
          type="file"
          class="unseen"
          accept=".svg,.dst,.json"
          multiple
          onChange={async ({ currentTarget }) => {
            const files = await givenFiles(currentTarget.files!);
            currentTarget.value = '';
            if (files.length) await openFiles(files);
          }}
        />
      </label>
      <DrawButton onDraw={beginDrawing} />
      <div class="pair">
        <button type="button" onClick={undo} disabled={!canUndo.value}>
          Undo
        </button>
        <button type="button" onClick={redo} disabled={!canRedo.value}>
          Redo
        </button>
      </div>
      <button type="button" class="mix" onClick={() => void mixAgain()} title="Key M">
        Mix again
      </button>
      <button
        type="button"
        onClick={() => {
          isBenchOpen.value = true;
        }}
      >
        Stitch bench
      </button>
      <TakeAway />
    </header>
  );
}
