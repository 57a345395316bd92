import type { SeamMap } from '../block/seam-map.js';
import { type Stop, stopsInOrder } from '../design/design.js';
import { threadKey } from '../design/merge.js';
import { runsOf } from '../design/pieces.js';
import {
  type Plate,
  type PlateSpot,
  placesOnLines,
  plateIn,
  plateRoom,
  traceLeads,
} from '../draw/plate-room.js';
import { seamPlates } from '../draw/seam-plates.js';
import type { Dressed } from '../dress.js';
import { threadColors } from '../formats/dressing.js';
import { type Box as Edges, squareAt } from '../geometry/box.js';
import type { Point } from '../geometry/point.js';
import type { Box, Page } from './page.js';
import { drawSwatch, type ThreadMark } from './thread-marks.js';

/** Height of a stop's plate and of a seam's number, mm of paper. */
const PLATE = 3.4;
const SEAM = 2.5;
/** Clear paper between two plates, mm. */
const CLEAR = 0.8;
/** Half of the signs that no number hides: the cross in the middle of the design, the ring where the needle starts. */
export const SIGN = 2.5;

export interface NumbersAsk {
  /** whether seams get their numbers */
  readonly seams: boolean;
  /** where signs stand on the page */
  readonly signs: readonly Point[];
  /** of the picture, on the page */
  readonly within: Edges;
}

/**
 * Numbers of seams in gray, those of stops in white on black with the swatch of their thread beside it, none over another. From
 * one that has no room where it belongs a line leads there. Where stops are crowded the swatches are left away, and then the
 * numbers of seams: the table has both.
 * @returns how many stops have no room for their number even so
 */
export function drawNumbers(
  page: Page,
  dressed: Dressed,
  marks: ReadonlyMap<string, ThreadMark>,
  onPage: (p: Point) => Point,
  asked: NumbersAsk,
): number {
  const { numbers, spots, unnumbered } = laidOut(dressed, onPage, asked);
  for (const [color, width] of [
    ['#ffffff', 0.7],
    ['#000000', 0.25],
  ] as const)
    page.stroke({ color, width }, (pen) => traceLeads(pen, spots));
  for (const [i, { text, plate, thread }] of numbers.entries()) {
    const spot = spots[i];
    if (!spot) continue;
    const { width, height } = plate;
    const box = { x: spot.at[0] - width / 2, y: spot.at[1] - height / 2, width, height };
    if (thread) stopPlate(page, text, box, threadColors(thread), marks.get(threadKey(thread))!.pattern);
    else seamPlate(page, text, box);
  }
  return unnumbered;
}

/** A number of the picture: of a seam where it has no thread. */
interface Numbered {
  readonly text: string;
  readonly thread?: Stop['thread'];
  readonly plate: Plate;
}

interface LaidOut {
  readonly numbers: readonly Numbered[];
  readonly spots: readonly (PlateSpot | null)[];
  /** stops */
  readonly unnumbered: number;
}

/** The richest of three ways that has room for all stops, or else the barest. */
function laidOut(dressed: Dressed, onPage: (p: Point) => Point, asked: NumbersAsk): LaidOut {
  const { map } = dressed.block;
  const taken = [
    ...asked.signs.map((at) => squareAt(at, SIGN)),
    ...(asked.seams ? map.junctions.map(({ at }) => squareAt(onPage(at), JUNCTION)) : []),
  ];
  const seams = asked.seams ? seamNumbers(map) : [];
  const lay = (swatch: number, withSeams: boolean): LaidOut => {
    const stops = stopNumbers(dressed, asked.seams, swatch);
    const numbers = [...(withSeams ? seams : []), ...stops].map((one) => ({
      ...one,
      plate: plateIn(one.plate, onPage),
    }));
    const plates = numbers.map(({ plate }) => plate);
    const spots = plateRoom(plates, { clear: CLEAR, within: asked.within, taken });
    const unnumbered = numbers.filter(({ thread }, i) => thread && !spots[i]).length;
    return { numbers, spots, unnumbered };
  };
  const rich = lay(SWATCH, true);
  if (rich.unnumbered === 0) return rich;
  const plain = lay(0, true);
  return plain.unnumbered === 0 ? plain : lay(0, false);
}

const seamNumbers = (map: SeamMap): Numbered[] =>
  seamPlates(map, (id) => ({ width: SEAM * (0.5 + 0.56 * String(id).length), height: SEAM })).map(
    (plate, i) => ({ text: String(map.seams[i].id), plate }),
  );

/** @param swatch width of the swatch beside a number; @param all those that sew on no seam too */
const stopNumbers = ({ design }: Dressed, all: boolean, swatch: number): Numbered[] =>
  stopsInOrder(design).flatMap((stop, i): Numbered[] => {
    // a plate would hide the figures that a sampler sews beside its lines
    if (!stop || (!all && stop.seams.length === 0)) return [];
    const text = String(i + 1);
    const places = placesOnLines(runsOf(stop.runs));
    const plate = { width: numberWidth(text) + swatch, height: PLATE, places };
    return [{ text, thread: stop.thread, plate }];
  });

/** Half of what no number hides of a place where seams meet, mm of paper. */
const JUNCTION = 0.6;

function seamPlate(page: Page, text: string, box: Box): void {
  page.box(box, { fill: '#ffffff' });
  const style = { size: SEAM, color: '#333333', align: 'center' } as const;
  page.text(text, box.x + box.width / 2, box.y + SEAM * 0.86, style);
}

/** Width of the swatch on a plate. */
const SWATCH = 4;
const numberWidth = (number: string): number => 1.4 + 1.75 * number.length;

/** A number in white on black, and beside it the swatch of its thread where there is room for it. */
function stopPlate(page: Page, number: string, box: Box, colors: readonly string[], pattern: number): void {
  const { x, y, width, height } = box;
  const black = Math.min(width, numberWidth(number));
  page.box({ x: x - 0.3, y: y - 0.3, width: width + 0.6, height: height + 0.6 }, { fill: '#ffffff' });
  page.box({ x, y, width: black, height }, { fill: '#000000' });
  const style = { size: 3.1, bold: true, color: '#ffffff', align: 'center' } as const;
  page.text(number, x + black / 2, y + height / 2 + 1.12, style);
  if (width > black) drawSwatch(page, { x: x + black, y, width: width - black, height }, colors, pattern);
}
