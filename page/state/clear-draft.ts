import { signal } from '@preact/signals';
import { change } from './actions.js';
import { LEAST_CORNERS, withClearShape } from './clear-shapes.js';
import { lengthIn } from './units.js';
import { onBlock, tableRoom, view } from './view.js';
import { picture, told, touched } from './work.js';

/** A place to be kept clear while its corners are being set, one after the other; as on the table, mm. */
type Place = readonly [number, number];

/** The corners so far; null while none is being drawn. */
export const clearDraft = signal<readonly Place[] | null>(null);
/** Where the cross is that keys move; null while a hand shows where. */
export const clearCross = signal<Place | null>(null);

/** Arrow keys move the cross by this, and with Shift by a tenth of it, mm. */
export const CROSS_STEP = 5;
/** A touch this near to the first corner closes the shape, px. */
const CLOSE = 20;

export function beginShape(): void {
  touched.value = null;
  clearCross.value = null;
  clearDraft.value = [];
  told.value = 'Touch the corners of what is to stay clear, one after the other';
}

/** A corner is set; at the first one the shape is closed. */
export function setCorner(at: Place): void {
  const corners = clearDraft.value ?? [];
  const near = CLOSE / view.value.scale;
  if (corners.length >= LEAST_CORNERS && isNear(at, corners[0], near)) closeShape();
  else if (corners.length === 0 || !isNear(at, corners[corners.length - 1], near / 4)) {
    clearDraft.value = [...corners, at];
    told.value = `Corner ${corners.length + 1} is set`;
  }
}

export function takeCornerBack(): void {
  clearDraft.value = clearDraft.value?.slice(0, -1) ?? null;
}

export function closeShape(): void {
  const placement = picture.value?.placement;
  const corners = clearDraft.value ?? [];
  leaveShape();
  if (!placement || corners.length < LEAST_CORNERS) return;
  change((was) => withClearShape(was, corners, placement));
  told.value = `A shape of ${corners.length} corners is kept clear`;
}

export function leaveShape(): void {
  clearDraft.value = null;
  clearCross.value = null;
}

const WAYS: Readonly<Record<string, Place>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** A key that was pressed on the table while a shape is drawn. @returns whether it meant something */
export function shapeKey({ key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>): boolean {
  const way = WAYS[key];
  if (way) moveCross(way, shiftKey ? CROSS_STEP / 10 : CROSS_STEP);
  else if (key === 'Enter' || key === ' ') pressCross();
  else if (key === 'Backspace' || key === 'Delete') takeCornerBack();
  else if (key === 'Escape') leaveShape();
  else return false;
  return true;
}

function moveCross([dx, dy]: Place, step: number): void {
  const { width, height } = tableRoom.value;
  const [x, y] = clearCross.value ?? onBlock(view.value, width / 2, height / 2);
  const at: Place = [x + dx * step, y + dy * step];
  clearCross.value = at;
  told.value = `${lengthIn(at[0])} across, ${lengthIn(at[1])} down`;
}

/** Sets a corner where the cross is; twice at one place closes the shape. */
function pressCross(): void {
  const at = clearCross.value;
  if (!at) return;
  const last = clearDraft.value?.at(-1);
  if (last && isNear(at, last, 0.05)) closeShape();
  else setCorner(at);
}

const isNear = ([ax, ay]: Place, [bx, by]: Place, within: number): boolean =>
  Math.hypot(ax - bx, ay - by) <= within;
