import { fromPoints, type Points } from './polyline.js';

/**
 * Figures as single lines, on a grid 4 wide and 6 high from the upper left. Numbers are drawn and sewn with these and not
 * with a font, so that they look the same everywhere and need none installed.
 */
export const FIGURES: readonly string[] = [
  '10 01 05 16 36 45 41 30 10',
  '12 20 26',
  '01 10 30 41 42 06 46',
  '01 10 30 41 42 33 23|33 44 45 36 16 05',
  '36 30 04 44',
  '40 00 03 33 44 45 36 16 05',
  '30 10 01 05 16 36 45 44 33 13 04',
  '00 40 16',
  '13 02 01 10 30 41 42 33 13 04 05 16 36 45 44 33',
  '42 33 13 02 01 10 30 41 45 36 16',
];

const ADVANCE = 5.5;

/** The lines of a whole number centered on (x, y), its figures `height` high. */
export function figureLines(value: number, x: number, y: number, height: number): Points[] {
  const figures = String(value);
  const scale = height / 6;
  const start = x - ((figures.length * ADVANCE - (ADVANCE - 4)) / 2) * scale;
  return [...figures].flatMap((figure, k) => {
    const left = start + k * ADVANCE * scale;
    return FIGURES[Number(figure)]
      .split('|')
      .map((stroke) =>
        fromPoints(
          stroke
            .split(' ')
            .map((spot) => [left + Number(spot[0]) * scale, y + (Number(spot[1]) - 3) * scale] as const),
        ),
      );
  });
}
