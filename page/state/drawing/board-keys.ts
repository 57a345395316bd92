import { OUTLINE } from '../../../src/formats/seam-drawing.js';
import { told } from '../work.js';
import { chosenLine, drawing, places, takeTool, tool } from './board.js';
import { allLines } from './lines.js';
import { finishPlaces, removeChosen, takeBackPlace } from './new-seam.js';

/** A key that was pressed on the board. @returns whether it meant something */
export function boardKey(key: string): boolean {
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[key];
  if (step) {
    nextChosen(step);
    return true;
  }
  switch (key) {
    case 'Enter':
      if (places.value.length > 0) finishPlaces();
      else document.querySelector<HTMLElement>('.line-points .point')?.focus();
      return true;
    case 'Delete':
    case 'Backspace':
      if (places.value.length > 0) takeBackPlace();
      else removeChosen();
      return true;
    case 'Escape':
      if (places.value.length > 0) places.value = [];
      else chosenLine.value = null;
      return true;
    default:
      return false;
  }
}

/** The next line is chosen, or the one before, round and round. */
function nextChosen(step: number): void {
  const lines = drawing.value ? allLines(drawing.value) : [];
  if (lines.length === 0) return;
  if (tool.value !== 'move') takeTool('move');
  const at = lines.findIndex(({ id }) => id === chosenLine.value);
  const next = at < 0 ? (step > 0 ? 0 : lines.length - 1) : (at + step + lines.length) % lines.length;
  chosenLine.value = lines[next].id;
  told.value = `${drawnTitle(lines[next].id)} chosen, ${lines[next].nodes.length} points`;
}

export const drawnTitle = (id: number): string => (id === OUTLINE ? 'Edge of the block' : `Line ${id}`);
