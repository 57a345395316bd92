import { bare, drawing, endDrawing, isDrawing, showsThread, tool } from '../../state/drawing/board.js';
import { addAcross } from '../../state/drawing/new-seam.js';
import { plural } from '../../state/words.js';
import { work } from '../../state/work.js';
import { FabricPanel } from './fabric-panel.js';
import { LineFacts } from './line-facts.js';
import { MissingList } from './missing-list.js';
import { NewBlock } from './new-block.js';
import { PhotoPanel } from './photo-panel.js';
import { Tools } from './tools.js';

const HINTS = {
  move: 'Touch a line, then drag its points. The small diamonds bend it. Lines that end on it come along.',
  straight:
    'Drag from edge to edge, or touch place after place: the seam ends where it meets a seam or the edge.',
  curved: 'Draw it as you would with chalk, or touch the places that it curves through.',
  fabric: 'Touch a patch, then choose its color.',
  photo: '',
} as const;

/** Beside the board: what is drawn with, and what is chosen. */
export function DrawPanel() {
  const count = drawing.value?.lines.length ?? 0;
  return (
    <>
      <div class="panel-head">
        <h2>Drawing seams</h2>
        <button type="button" class="done" onClick={endDrawing}>
          Done
        </button>
      </div>
      <Tools />
      {HINTS[tool.value] && <p class="hint">{HINTS[tool.value]}</p>}
      {isSewn() && (
        <p class="hint">
          What the file sews lies behind the lines, and stays as it is. The dressing goes where you draw.
        </p>
      )}
      <MissingList />
      {(work.value?.dressing.treatments.length ?? 0) > 0 && (
        <label class="check">
          <input
            type="checkbox"
            checked={showsThread.value}
            onChange={({ currentTarget }) => {
              showsThread.value = currentTarget.checked;
            }}
          />
          Stitches on the board
        </label>
      )}
      {tool.value === 'move' && <LineFacts />}
      {tool.value === 'fabric' && <FabricPanel />}
      {tool.value === 'photo' && <PhotoPanel />}
      <section class="draw-more">
        {drawing.value && (
          <p class="aside">{count === 0 ? 'No seams yet.' : `${plural(count, 'line')} drawn.`}</p>
        )}
        <button type="button" onClick={addAcross} title="To be moved by keys from there">
          A seam across the middle
        </button>
        <NewBlock />
      </section>
    </>
  );
}

/** Whether the block is a stitch file's, whose own stops are sewn as well. */
const isSewn = (): boolean => (bare.value?.block.existing.length ?? 0) > 0;

/** Goes to the board and back. */
export function DrawButton({ onDraw }: { onDraw: () => void }) {
  return (
    <button type="button" aria-pressed={isDrawing.value} onClick={isDrawing.value ? endDrawing : onDraw}>
      Draw seams
    </button>
  );
}
