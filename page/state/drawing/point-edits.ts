import type { DrawnSeam, SeamDrawing } from '../../../src/formats/seam-drawing.js';
import type { Point } from '../../../src/geometry/point.js';
import { release } from '../actions.js';
import { type Work, work } from '../work.js';
import { draw, drawing, isHeld, settleLines } from './board.js';
import { reachMm } from './board-hands.js';
import { withLineFollowed } from './followed.js';
import { bent, lineOf, withNodeAt } from './lines.js';
import { snapped } from './snap.js';

/** Lines and work as they were when a handle was taken; null while none is held. */
let held: { readonly lines: SeamDrawing; readonly work: Work; readonly grip: string } | null = null;
let taken = 0;

/** A point or the middle of a stretch of a line. */
export interface Grip {
  readonly line: number;
  readonly kind: 'point' | 'bend';
  /** of the node, or of the stretch */
  readonly place: number;
}

export function takeGrip(): void {
  const [lines, now] = [drawing.value, work.value];
  if (!lines || !now) return;
  // every drag is a step of its own
  held = { lines, work: now, grip: `drag ${++taken}` };
  isHeld.value = true;
}

/** The handle is dragged: lines show it at once, patches and stitches as fast as the core can make them. */
export function dragGrip({ line: id, kind, place }: Grip, to: Point): void {
  const line = held && lineOf(held.lines, id);
  if (!held || !line) return;
  const { lines, grip } = held;
  const { at } = kind === 'point' ? snapped(to, lines, reachMm(), id) : { at: to };
  const straight = 5 / (16 / reachMm());
  const changed = kind === 'point' ? withNodeAt(line, place, at) : bent(line, place, at, straight);
  draw(withLineFollowed(lines, changed), { grip, from: held.work });
}

export function dropGrip(): void {
  held = null;
  settleLines();
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
  if (changed !== line) draw(withLineFollowed(now, changed), { grip });
}

/**
 * A point moved by keys or numbers: it goes where it is told, and stays within the block.
 * @param grip see changeLine
 */
export function putPoint(id: number, n: number, [x, y]: Point, grip: string | null = null): void {
  const now = drawing.value;
  if (!now) return;
  const at: Point = [clamped(x, now.width), clamped(y, now.height)];
  changeLine(id, (line) => withNodeAt(line, n, at), grip);
}

const clamped = (mm: number, most: number): number =>
  Math.min(most, Math.max(0, Math.round(1000 * mm) / 1000));

export const letGoOfPoint = (): void => release();
