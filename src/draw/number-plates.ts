import { drawNumber } from './digits.js';
import { drawWords, wordsLength } from './lettering.js';
import { type Place, type PlateSpot, traceLeads } from './plate-room.js';
import { element } from './svg.js';
import { pathData } from './svg-pen.js';

const INK = '#22313f';

/** Of a plate with a number on it, mm. @param size height of the figures is 0.85 of it */
export const numberPlateSize = (value: number, size: number) => ({
  width: size * (0.85 + 0.5 * String(value).length),
  height: size * 1.5,
});

/** A number in dark ink on a white plate. */
export function numberPlate(value: number, [x, y]: Place, size: number): string {
  const { width, height } = numberPlateSize(value, size);
  const box = { x: x - width / 2, y: y - height / 2, width, height, rx: size * 0.35 };
  return element(
    'g',
    { fill: 'none', stroke: INK, 'stroke-width': size * 0.12, 'stroke-linecap': 'round' },
    element('rect', { ...box, fill: '#fff', 'stroke-width': size * 0.08 }),
    element('path', { d: pathData((pen) => drawNumber(pen, value, x, y, size * 0.85)) }),
  );
}

/** Of a dark plate with words on it, mm. @param size height of capitals is 0.85 of it */
export const darkPlateSize = (text: string, size: number) => ({
  width: Math.max(size * 1.5, wordsLength(text, size * 0.85) + size * 0.9),
  height: size * 1.5,
});

/** Words or a measure in white on a dark plate with round ends. */
export function darkPlate(text: string, [x, y]: Place, size: number): string {
  const high = size * 0.85;
  const left = x - wordsLength(text, high) / 2;
  const { width, height } = darkPlateSize(text, size);
  const box = { x: x - width / 2, y: y - height / 2, width, height, rx: height / 2 };
  return element(
    'g',
    { fill: 'none', stroke: '#fff', 'stroke-width': size * 0.13, 'stroke-linecap': 'round' },
    element('rect', { ...box, fill: INK, 'stroke-width': size * 0.1 }),
    element('path', { d: pathData((pen) => void drawWords(pen, text, left, y + high / 2, high)) }),
  );
}

/** Lines from plates that lie aside to what they tell of, dark with a light edge. */
export function plateLeads(spots: readonly (PlateSpot | null)[], size: number): string {
  const d = pathData((pen) => traceLeads(pen, spots));
  if (d === '') return '';
  return element(
    'g',
    { fill: 'none', 'stroke-linecap': 'round' },
    element('path', { d, stroke: '#fff', 'stroke-width': size * 0.3 }),
    element('path', { d, stroke: INK, 'stroke-width': size * 0.14 }),
  );
}
