import { besideAt, lengthOf, placeAlong } from './handle-places.js';
import { tableRoom, view } from './view.js';

/** A letter of a label is about so wide, its rounded ends together so much, and it is so high, px. */
const LETTER = 8.2;
const ENDS = 24;
const HIGH = 30;
/** So far off the stitches it stands, and off the edge of the table, px. */
const CLEAR = 12;
const EDGE = 4;
/** Further off, where something else stands there, px. */
const FURTHER = [0, 34, 68];
/** Shares of the line that it may stand beside, its middle first. */
const BESIDE = [0.5, 0.3, 0.7];

const wideOf = (told: string): number => LETTER * told.length + ENDS;

/** What a label takes, as a row of round things; mm. */
export function labelParts(told: string, scale: number) {
  const half = Math.max(0, wideOf(told) - HIGH) / 2;
  const count = Math.max(1, Math.ceil((2 * half) / (HIGH / 2)));
  const parts = Array.from({ length: count + 1 }, (_, i): [number, number] => [
    (half * ((2 * i) / count - 1)) / scale,
    0,
  ]);
  return { parts, reach: HIGH / 2 / scale };
}

/**
 * Where a label may lie with its middle, mm, the best first: wholly to the right hand of the line, whichever way that goes, off
 * its stitches; else further off, to the left hand, beside other places. Where the table ends it does not.
 */
export function labelPlaces(points: Float64Array, width: number, told: string, scale: number) {
  const length = lengthOf(points);
  const all = [-1, 1].flatMap((hand) =>
    FURTHER.flatMap((further) =>
      BESIDE.map((share) => {
        const on = placeAlong(points, share * length);
        const [lx, ly] = on.left;
        // beside a slanting line it is a corner of the label that lies next to it
        const reach = Math.min(wideOf(told) / 2, wideOf(told) * Math.abs(lx)) * Math.abs(lx);
        const half = reach + Math.min(HIGH / 2, HIGH * Math.abs(ly)) * Math.abs(ly);
        return { at: besideAt(on, hand * (width / 2 + (half + CLEAR + further) / scale)) };
      }),
    ),
  );
  const { x, y } = view.value;
  const room = tableRoom.value;
  const isOn = ({ at }: (typeof all)[number]) => {
    const [px, py] = [x + at[0] * scale, y + at[1] * scale];
    const half = wideOf(told) / 2 + EDGE;
    return px > half && px < room.width - half && py > HIGH / 2 + EDGE && py < room.height - HIGH / 2 - EDGE;
  };
  const on = all.filter(isOn);
  return on.length > 0 ? on : all;
}
