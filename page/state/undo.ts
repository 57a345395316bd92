import { redo, undo } from './actions.js';
import { allDrawn } from './drawing/board.js';

/** One step back from what the maker sees: lines that the core does not have yet go to it first. */
export async function undoSeen(): Promise<void> {
  await allDrawn();
  undo();
}

export async function redoSeen(): Promise<void> {
  await allDrawn();
  redo();
}
