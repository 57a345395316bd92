import { type Box, boxAt, boxOf } from '../geometry/box.js';
import { boxesInSquares } from '../geometry/boxes-in-squares.js';
import { distance, type Point } from '../geometry/point.js';
import { type Points, pointAt, pointCount, polylineLength } from '../geometry/polyline.js';
import type { Pen } from './pen.js';

export type Place = Point;

/** A number or a few words to be laid where it tells of something. */
export interface Plate {
  /** places on what it tells of, the best first; at least one */
  readonly places: Iterable<Place>;
  readonly width: number;
  readonly height: number;
}

/** Where the middle of a plate lies, and the place that it tells of; both the same where there is room on it. */
export interface PlateSpot {
  readonly at: Place;
  readonly on: Place;
}

/** A plate is moved aside by at most so many of its own sizes, where nothing else is said. */
const FURTHEST = 4;
/** Where none is to be lost. */
const FURTHEST_FOR_ALL = 12;
/** Moves aside in plates, the shortest first, half a plate from one ring to the next. */
const RINGS: readonly (readonly Place[])[] = Array.from({ length: 2 * FURTHEST_FOR_ALL }, (_, ring) => {
  const far = (ring + 1) / 2;
  const ways = 8 * (ring + 1);
  return Array.from({ length: ways }, (_, i): Place => {
    const way = (2 * Math.PI * i) / ways;
    return [far * Math.cos(way), far * Math.sin(way)];
  });
});

/** Where plates may lie; all in one unit of length. */
export interface Room {
  /** between two plates */
  readonly clear: number;
  /** plates lie in it whole */
  readonly within: Box;
  /** what no plate may lie over */
  readonly taken?: readonly Box[];
  /** what plates that are moved aside had better not lie over, since they would seem to tell of it */
  readonly avoided?: readonly Box[];
  /** plates are moved aside by at most so many of their own sizes */
  readonly furthest?: number;
}

/**
 * A place for each of several plates, none over another nor over what is taken: on what it tells of, those given first before
 * others. Those that have no room there lie beside it, as near as there is room; null where there is none. Linear in the plates:
 * boxes are kept in squares.
 */
export function plateRoom(
  plates: readonly Plate[],
  { clear, within, taken = [], avoided = [], furthest = FURTHEST }: Room,
): (PlateSpot | null)[] {
  const side = plates.reduce((most, { width, height }) => Math.max(most, width, height), 1e-3) + clear;
  const full = boxesInSquares<null>(side);
  for (const box of taken) full.put(box, null);
  const shunned = boxesInSquares<null>(side);
  for (const box of avoided) shunned.put(box, null);
  const isFree = (box: Box): boolean => liesIn(box, within) && !full.meets(grown(box, clear));
  const laid = ({ width, height }: Plate, at: Place, on: Place): PlateSpot => {
    full.put(boxAt(at, width, height), null);
    return { at, on };
  };
  const onLines = plates.map((plate) => {
    for (const place of plate.places) {
      if (isFree(boxAt(place, plate.width, plate.height))) return laid(plate, place, place);
    }
    return null;
  });
  return plates.map((plate, i) => {
    if (onLines[i]) return onLines[i];
    const [on] = plate.places;
    const at = on && nearest(plate, on);
    return at ? laid(plate, at, on) : null;
  });

  /** The nearest place aside that is free, unless one that lies on nothing to be avoided is hardly further. */
  function nearest({ width, height }: Plate, [x, y]: Place): Place | undefined {
    let first: Place | undefined;
    let last = 2 * furthest;
    for (let ring = 0; ring < last; ring++) {
      for (const [across, down] of RINGS[ring]) {
        const at: Place = [x + across * (width + clear), y + down * (height + clear)];
        const box = boxAt(at, width, height);
        if (!isFree(box)) continue;
        if (!shunned.meets(box)) return at;
        first ??= at;
        last = Math.min(last, ring + HARDLY_FURTHER);
      }
    }
    return first;
  }
}

/** In rings. */
const HARDLY_FURTHER = 4;

/**
 * The same in a frame that is made larger on all sides, as often as it takes, until all have room.
 * @param step that it is made larger by at a time
 */
export function roomForAll(
  plates: readonly Plate[],
  room: Room,
  step: number,
): { readonly spots: readonly (PlateSpot | null)[]; readonly frame: Box } {
  let { within } = room;
  for (let steps = 0; ; steps++) {
    const spots = plateRoom(plates, { ...room, within, furthest: FURTHEST_FOR_ALL });
    if (steps === MOST_STEPS || !spots.includes(null)) return { spots, frame: within };
    within = grown(within, step);
  }
}

/** As many as a plate can be moved aside, and then some. */
const MOST_STEPS = 6;

const liesIn = (box: Box, { left, top, right, bottom }: Box): boolean =>
  box.left >= left && box.right <= right && box.top >= top && box.bottom <= bottom;

const grown = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

/** So many parts of a line are tried. */
const PARTS = 16;

/**
 * Needle points of lines, the longest line first, and of each those nearest to its middle: what is sewn out and back has its ends
 * halfway along.
 */
export const placesOnLines = (lines: readonly Points[]): Iterable<Place> => ({
  *[Symbol.iterator]() {
    const byLength = lines
      .filter(({ length }) => length > 0)
      .map((line) => ({ line, long: polylineLength(line) }))
      .sort((a, b) => b.long - a.long);
    for (const { line } of byLength) {
      const { left, top, right, bottom } = boxOf([line]);
      const middle: Place = [(left + right) / 2, (top + bottom) / 2];
      const places = Array.from({ length: PARTS - 1 }, (_, i) =>
        pointAt(line, Math.round(((i + 1) / PARTS) * (pointCount(line) - 1))),
      );
      yield* places.sort((a, b) => distance(a, middle) - distance(b, middle));
    }
  },
});

/** A plate of the same size with its places in another frame. */
export const plateIn = (plate: Plate, frame: (place: Place) => Place): Plate => ({
  ...plate,
  places: {
    *[Symbol.iterator]() {
      for (const place of plate.places) yield frame(place);
    },
  },
});

/** Lines that lead from plates which lie aside to what they tell of. */
export function traceLeads(pen: Pen, spots: readonly (PlateSpot | null)[]): void {
  for (const spot of spots) {
    if (!spot || spot.at === spot.on) continue;
    pen.move(...spot.on);
    pen.line(...spot.at);
  }
}
