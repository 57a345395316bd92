import { type Points, polylineLength } from '../geometry/polyline.js';
import { drawNumber } from './digits.js';
import { drawWords, wordsLength } from './lettering.js';
import { element } from './svg.js';
import { pathData } from './svg-pen.js';

const INK = '#22313f';
type Place = readonly [number, number];

/** A number in dark ink on a white plate. */
export function numberPlate(value: number, [x, y]: Place, size: number): string {
  const wide = size * (0.85 + 0.5 * String(value).length);
  const box = { x: x - wide / 2, y: y - size * 0.75, width: wide, height: size * 1.5, rx: size * 0.35 };
  return element(
    'g',
    { fill: 'none', stroke: INK, 'stroke-width': size * 0.12, 'stroke-linecap': 'round' },
    element('rect', { ...box, fill: '#fff', 'stroke-width': size * 0.08 }),
    element('path', { d: pathData((pen) => drawNumber(pen, value, x, y, size * 0.85)) }),
  );
}

/** Words or a measure in white on a dark plate with round ends. */
export function darkPlate(text: string, [x, y]: Place, size: number): string {
  const high = size * 0.85;
  const long = wordsLength(text, high);
  const wide = Math.max(size * 1.5, long + size * 0.9);
  const box = { x: x - wide / 2, y: y - size * 0.75, width: wide, height: size * 1.5, rx: size * 0.75 };
  return element(
    'g',
    { fill: 'none', stroke: '#fff', 'stroke-width': size * 0.13, 'stroke-linecap': 'round' },
    element('rect', { ...box, fill: INK, 'stroke-width': size * 0.1 }),
    element('path', { d: pathData((pen) => void drawWords(pen, text, x - long / 2, y + high / 2, high)) }),
  );
}

/**
 * A place on the longest run of each of several things, away from the places of those before it as far as there is room.
 * @param taken places that have been given away already
 */
export function plateSpots(
  all: readonly (readonly Points[])[],
  size: number,
  taken: readonly Place[] = [],
): Place[] {
  const spots: Place[] = [];
  for (const runs of all) {
    const run = longest(runs) ?? Float64Array.of(0, 0);
    const tries = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9].map((share): Place => {
      const i = 2 * Math.round(share * (run.length / 2 - 1));
      return [run[i], run[i + 1]];
    });
    const room = ([x, y]: Place) =>
      [...taken, ...spots].reduce((least, [tx, ty]) => Math.min(least, Math.hypot(x - tx, y - ty)), 99);
    spots.push(
      tries.find((spot) => room(spot) > 2.4 * size) ?? tries.reduce((a, b) => (room(b) > room(a) ? b : a)),
    );
  }
  return spots;
}

function longest(runs: readonly Points[]): Points | undefined {
  let [best, most]: [Points | undefined, number] = [undefined, -1];
  for (const run of runs) {
    const length = polylineLength(run);
    if (length > most) [best, most] = [run, length];
  }
  return best;
}
