import { mixAgain, openFiles } from '../state/actions.js';
import { isBenchOpen } from '../state/bench/on-bench.js';
import { beginDrawing } from '../state/drawing/board.js';
import { givenFiles } from '../state/given-files.js';
import { redoSeen, undoSeen } from '../state/undo.js';
import { canRedo, canUndo, work } from '../state/work.js';
import { BackAndForth } from './back-and-forth.js';
import { DrawButton } from './drawing/draw-panel.js';
import { FileButton } from './file-button.js';
import { TakeAway } from './take-away.js';

/** The bar above: what is open, one step back and forth, the large button that mixes, and what to take away. */
export function Head() {
  const file = work.value?.dressing.block.file.replace(/^.*[/\\]/, '');
  return (
    <header class="head">
      <h1>
        Seamwright <span class="file">{file}</span>
      </h1>
      <FileButton
        title="Open a block"
        accept=".svg,.dst,.json"
        onFiles={async (files) => openFiles(await givenFiles(files))}
      />
      <DrawButton onDraw={beginDrawing} />
      <BackAndForth canUndo={canUndo.value} canRedo={canRedo.value} undo={undoSeen} redo={redoSeen} />
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
