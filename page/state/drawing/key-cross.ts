import type { Point } from '../../../src/geometry/point.js';
import { lengthIn } from '../units.js';
import { told } from '../work.js';
import { aim, drawing, tool } from './board.js';
import { addPlace } from './new-seam.js';
import { markPhoto } from './photo.js';
import { type Snapped, snapped } from './snap.js';

/** Arrow keys move the cross by this, and with Shift by a tenth of it, mm. */
const STEP = 5;
/** It is drawn to what lies this near, mm: less than a step, or it would never come away. */
const REACH = 2;

/** Where the cross is that keys move; null while a hand shows where. */
let cross: Point | null = null;

export function leaveCross(): void {
  cross = null;
}

/** Whether keys move a cross with what is drawn with now. */
export const hasCross = (): boolean =>
  tool.value === 'straight' || tool.value === 'curved' || tool.value === 'photo';

/** The cross is moved by one step; it begins in the middle of the block. */
export function moveCross([dx, dy]: Point, isFine: boolean): void {
  const now = drawing.value;
  if (!now) return;
  const step = isFine ? STEP / 10 : STEP;
  const [x, y] = cross ?? aim.value?.at ?? [now.width / 2, now.height / 2];
  cross = [clamped(x + dx * step, now.width), clamped(y + dy * step, now.height)];
  const at: Snapped = tool.value === 'photo' ? { at: cross, on: null } : snapped(cross, now, REACH);
  aim.value = at;
  const [across, down] = at.at.map((mm) => lengthIn(mm));
  told.value = `${across} across, ${down} down${at.on ? `, on ${SAID[at.on]}` : ''}`;
}

const SAID = { point: 'a point of a line', seam: 'a seam', outline: 'the edge' } as const;

const clamped = (mm: number, most: number): number => Math.min(most, Math.max(0, mm));

/** What a touch would do is done where the cross is. @returns whether there is one */
export function pressCross(): boolean {
  if (!cross || !hasCross()) return false;
  if (tool.value === 'photo') markPhoto(cross);
  else addPlace(cross, REACH);
  return true;
}
