import { OUTLINE } from '../../../src/formats/seam-drawing.js';
import type { Point } from '../../../src/geometry/point.js';
import { told } from '../work.js';
import { bare, chosenLine, chosenPatch, drawing, places, takeTool, tool } from './board.js';
import { hasCross, moveCross, pressCross } from './key-cross.js';
import { allLines } from './lines.js';
import { finishPlaces, removeChosen, takeBackPlace } from './new-seam.js';

/** A key that was pressed on the board. @returns whether it meant something */
export function boardKey({ key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>): boolean {
  const way = WAYS[key];
  if (way && hasCross()) {
    moveCross(way, shiftKey);
    return true;
  }
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[key];
  if (step) {
    if (tool.value === 'fabric') nextPatch(step);
    else nextChosen(step);
    return true;
  }
  switch (key) {
    case 'Enter':
      if (pressCross()) return true;
      if (places.value.length > 0) finishPlaces();
      else document.querySelector<HTMLElement>('.line-points .point, .fabrics .chosen input')?.focus();
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

const WAYS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The next patch is chosen, or the one before, round and round. */
function nextPatch(step: number): void {
  const ids = (bare.value?.block.patches ?? []).map(({ id }) => id);
  if (ids.length === 0) return;
  const at = ids.indexOf(chosenPatch.value ?? (step > 0 ? ids[ids.length - 1] : ids[0]));
  chosenPatch.value = ids[(at + step + ids.length) % ids.length];
  told.value = `Patch ${chosenPatch.value} chosen`;
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
