import type { DrawnSeam, SeamDrawing } from '../../../src/formats/seam-drawing.js';
import type { Point } from '../../../src/geometry/point.js';
import { release } from '../actions.js';
import { draft, draw, drawing, isHeld } from './board.js';
import { reachMm } from './board-hands.js';
import { withLineFollowed } from './followed.js';
import { bent, lineOf, withNodeAt } from './lines.js';
import { snapped } from './snap.js';

/** The lines as they were when a handle was taken. */
let held: SeamDrawing | null = null;

/** A point or the middle of a stretch of a line. */
export interface Grip {
  readonly line: number;
  readonly kind: 'point' | 'bend';
  /** of the node, or of the stretch */
  readonly place: number;
}

export function takeGrip(): void {
  held = drawing.value;
  isHeld.value = true;
}

/** The handle is dragged: lines show it at once, and nothing is drawn for good before it is let go. */
export function dragGrip({ line: id, kind, place }: Grip, to: Point): void {
  const line = held && lineOf(held, id);
  if (!held || !line) return;
  const { at } = kind === 'point' ? snapped(to, held, reachMm(), id) : { at: to };
  const straight = 5 / (16 / reachMm());
  const changed = kind === 'point' ? withNodeAt(line, place, at) : bent(line, place, at, straight);
  draft.value = withLineFollowed(held, changed);
}

export function dropGrip(): void {
  const [was, is] = [held, draft.value];
  held = null;
  isHeld.value = false;
  if (is && is !== was) draw(is);
}

/** A line is changed at once. @param grip changes that follow each other by the same grip are undone together */
export function changeLine(
  id: number,
  change: (line: DrawnSeam) => DrawnSeam,
  grip: string | null = null,
): void {
  const now = drawing.value;
  const line = now && lineOf(now, id);
  if (!now || !line) return;
  const changed = change(line);
  if (changed !== line) draw(withLineFollowed(now, changed), grip);
}

/** A point moved by keys or numbers: it goes where it is told, and stays within the block. */
export function putPoint(id: number, n: number, [x, y]: Point): void {
  const now = drawing.value;
  if (!now) return;
  const at: Point = [clamped(x, now.width), clamped(y, now.height)];
  changeLine(id, (line) => withNodeAt(line, n, at), `point ${id} ${n}`);
}

const clamped = (mm: number, most: number): number =>
  Math.min(most, Math.max(0, Math.round(1000 * mm) / 1000));

export const letGoOfPoint = (): void => release();
