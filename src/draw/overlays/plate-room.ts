import type { Points } from '../../geometry/polyline.js';
import type { Frame } from '../svg.js';

type Place = readonly [number, number];

/** Where a plate lies, and the place on its line that it tells of; both the same where there is room on the line. */
export interface PlateSpot {
  readonly at: Place;
  readonly on: Place;
}

/** Parts of the way along a line that are tried, the middle first. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];
/** A plate is moved aside by at most so many of its widths, and to so many sides. */
const FURTHEST = 5;
const SIDES = 16;

/**
 * A place for the plate of each of several things, none nearer to another than `apart`: on its lines, those given first before
 * others, or else beside them, as near as there is room. Linear in the things: places are kept in squares.
 *
 * @param lines of each thing, at least one
 * @param within where plates may lie
 * @param taken places that have been given away already
 */
export function plateRoom(
  things: readonly (readonly Points[])[],
  apart: number,
  within: Frame,
  taken: readonly Place[] = [],
): (PlateSpot | null)[] {
  const squares = new Map<string, Place[]>();
  const square = (column: number, row: number) => `${column} ${row}`;
  const of = (at: number) => Math.floor(at / apart);
  const take = (place: Place) => {
    const key = square(of(place[0]), of(place[1]));
    squares.set(key, [...(squares.get(key) ?? []), place]);
  };
  const isFree = ([x, y]: Place): boolean => {
    if (x < within.left || x > within.right || y < within.top || y > within.bottom) return false;
    for (let column = of(x) - 1; column <= of(x) + 1; column++) {
      for (let row = of(y) - 1; row <= of(y) + 1; row++) {
        const near = squares.get(square(column, row)) ?? [];
        if (near.some(([px, py]) => Math.hypot(px - x, py - y) < apart)) return false;
      }
    }
    return true;
  };
  for (const place of taken) take(place);
  return things.map((lines) => {
    const middle = alongLine(lines[0], SHARES[0]);
    const on = first(lines, (line) => first(SHARES, (share) => freeAt(alongLine(line, share))));
    const at = on ?? first(ASIDE, (step) => freeAt(moved(middle, step)));
    if (!at) return null;
    take(at);
    return { at, on: on ?? middle };
  });

  function freeAt(place: Place): Place | undefined {
    return isFree(place) ? place : undefined;
  }
  function moved([x, y]: Place, [across, down]: Place): Place {
    return [x + apart * across, y + apart * down];
  }
}

/** Ways aside, the shortest first. */
const ASIDE: readonly Place[] = Array.from({ length: FURTHEST * 2 * SIDES }, (_, i): Place => {
  const far = 1 + Math.floor(i / SIDES) / 2;
  const way = (2 * Math.PI * (i % SIDES)) / SIDES;
  return [far * Math.cos(way), far * Math.sin(way)];
});

/** The needle point at a part of the way along a line. */
function alongLine(line: Points, share: number): Place {
  const i = 2 * Math.round(share * (line.length / 2 - 1));
  return [line[i], line[i + 1]];
}

function first<In, Out>(all: readonly In[], find: (one: In) => Out | undefined): Out | undefined {
  for (const one of all) {
    const found = find(one);
    if (found !== undefined) return found;
  }
  return undefined;
}
