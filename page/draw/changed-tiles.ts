import type { Box } from '../../src/geometry/box.js';

/** Whole dots of a canvas. */
export interface Tile {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A canvas is drawn in squares of so many dots: smaller ones cut more strokes apart, larger ones are drawn for less reason. */
export const SIDE = 128;
/** Soft edges reach so many dots further than what they are of. */
const RIM = 2;

/**
 * The squares of a canvas that any of these boxes meets: a seam that runs slantwise takes little of it.
 *
 * @param boxes in dots of the canvas
 */
export function changedTiles(boxes: readonly Box[], width: number, height: number): Tile[] {
  const across = Math.ceil(width / SIDE);
  const down = Math.ceil(height / SIDE);
  const isChanged = new Uint8Array(across * down);
  const squares = (from: number, to: number, most: number): [number, number] => [
    Math.max(0, Math.floor((from - RIM) / SIDE)),
    Math.min(most, Math.floor((to + RIM) / SIDE) + 1),
  ];
  for (const { left, top, right, bottom } of boxes) {
    const [from, to] = squares(left, right, across);
    const [first, last] = squares(top, bottom, down);
    for (let row = first; row < last; row++) {
      if (from < to) isChanged.fill(1, row * across + from, row * across + to);
    }
  }
  const tiles: Tile[] = [];
  for (let i = 0; i < isChanged.length; i++) {
    if (!isChanged[i]) continue;
    const x = (i % across) * SIDE;
    const y = Math.floor(i / across) * SIDE;
    tiles.push({ x, y, width: Math.min(SIDE, width - x), height: Math.min(SIDE, height - y) });
  }
  return tiles;
}

export const allTiles = (width: number, height: number): Tile[] =>
  changedTiles([{ left: 0, top: 0, right: width, bottom: height }], width, height);
