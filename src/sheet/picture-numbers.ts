import { stopsInOrder } from '../design/design.js';
import { threadKey } from '../design/merge.js';
import { seamNumberSpot } from '../draw/map-picture.js';
import { plateSpots } from '../draw/number-plates.js';
import type { Dressed } from '../dress.js';
import { threadColors } from '../formats/dressing.js';
import type { Point } from '../geometry/point.js';
import type { Points } from '../geometry/polyline.js';
import type { Runs } from '../needle/run.js';
import type { Box, Page } from './page.js';
import { platePlaces } from './plate-places.js';
import { drawSwatch, type ThreadMark } from './thread-marks.js';

/** Height of a stop's plate and of a seam's number, mm of paper. */
const PLATE = 3.4;
const SEAM = 2.5;
/** Half of the signs that no number hides: the cross in the middle of the design, the ring where the needle starts. */
export const SIGN = 2.5;

export interface NumbersAsk {
  /** whether seams get their numbers */
  readonly seams: boolean;
  /** where signs stand on the page */
  readonly signs: readonly Point[];
  /** of the picture, on the page */
  readonly within: Box;
}

/** Numbers of seams in gray, those of stops in white on black with the swatch of their thread beside it. */
export function drawNumbers(
  page: Page,
  { block: { map }, design }: Dressed,
  marks: ReadonlyMap<string, ThreadMark>,
  onPage: (p: Point) => Point,
  asked: NumbersAsk,
): void {
  const signs = asked.signs.map(
    ([x, y]): Box => ({ x: x - SIGN, y: y - SIGN, width: 2 * SIGN, height: 2 * SIGN }),
  );
  const numbers = (asked.seams ? map.seams : []).map((seam) => ({
    text: String(seam.id),
    at: onPage(seamNumberSpot(seam, map, SEAM)),
    width: SEAM * (0.5 + 0.56 * String(seam.id).length),
    height: SEAM,
  }));
  const boxes = platePlaces(numbers, signs);
  const seams = numbers.map(({ text }, i) => ({ text, box: boxes[i] }));
  for (const { text, box } of seams) {
    page.box(box, { fill: '#ffffff' });
    const style = { size: SEAM, color: '#333333', align: 'center' } as const;
    page.text(text, box.x + box.width / 2, box.y + SEAM * 0.86, style);
  }
  const shown = stopsInOrder(design).flatMap((stop, i) =>
    // a plate would hide the figures that a sampler sews beside its lines
    stop && (asked.seams || stop.seams.length > 0) ? [{ stop, number: String(i + 1) }] : [],
  );
  const spots = plateSpots(
    shown.map(({ stop }) => runsOnPage(stop.runs, onPage)),
    2 * PLATE,
    seams.map(({ box }): Point => [box.x + box.width / 2, box.y + box.height / 2]),
  );
  const places = platePlaces(
    shown.map(({ number }, k) => ({
      at: heldIn(asked.within, spots[k]),
      width: numberWidth(number) + SWATCH,
      height: PLATE,
    })),
    [...signs, ...boxes],
  );
  shown.forEach(({ stop, number }, k) => {
    const { pattern } = marks.get(threadKey(stop.thread))!;
    stopPlate(page, number, places[k], threadColors(stop.thread), pattern);
  });
}

/** The nearest place at which half a plate does not reach out of a box. */
const heldIn = ({ x, y, width, height }: Box, at: Point): Point => [
  Math.min(Math.max(at[0], x + PLATE), x + width - PLATE),
  Math.min(Math.max(at[1], y + PLATE / 2), y + height - PLATE / 2),
];

/** Width of the swatch on a plate. */
const SWATCH = 4;
const numberWidth = (number: string): number => 1.4 + 1.75 * number.length;

/** A number in white on black, and beside it the swatch of its thread. */
function stopPlate(page: Page, number: string, box: Box, colors: readonly string[], pattern: number): void {
  const { x, y, width, height } = box;
  const black = numberWidth(number);
  page.box({ x: x - 0.3, y: y - 0.3, width: width + 0.6, height: height + 0.6 }, { fill: '#ffffff' });
  page.box({ x, y, width: black, height }, { fill: '#000000' });
  const style = { size: 3.1, bold: true, color: '#ffffff', align: 'center' } as const;
  page.text(number, x + black / 2, y + height / 2 + 1.12, style);
  drawSwatch(page, { x: x + black, y, width: SWATCH, height }, colors, pattern);
}

function runsOnPage({ xy, start }: Runs, onPage: (p: Point) => Point): Points[] {
  return Array.from({ length: Math.max(0, start.length - 1) }, (_, r) => {
    const run = xy.slice(2 * start[r], 2 * start[r + 1]);
    for (let i = 0; i < run.length; i += 2) [run[i], run[i + 1]] = onPage([run[i], run[i + 1]]);
    return run;
  });
}
