import type { SeamMap } from '../../src/block/seam-map.js';
import { fromPoints } from '../../src/geometry/polyline.js';

const box = (x0: number, y0: number, x1: number, y1: number) =>
  fromPoints([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
    [x0, y0],
  ]);

/** A block of 60 x 50 mm, an upper patch of known fabric and a lower one of unknown, with one seam between. */
export const twoPatches: SeamMap = {
  width: 60,
  height: 50,
  outline: { points: box(0, 0, 60, 50), corners: [] },
  seams: [
    {
      id: 1,
      closed: false,
      points: fromPoints([
        [0, 25],
        [60, 25],
      ]),
      corners: [],
      ends: [
        { kind: 'outline', junction: 0 },
        { kind: 'outline', junction: 1 },
      ],
      crossings: [],
      sides: [{ from: 0, to: 60, left: 1, right: 2 }],
    },
  ],
  junctions: [
    { at: [0, 25], arms: [{ seam: 1, u: 0, sense: 1, direction: 0 }], through: null, onOutline: true },
    {
      at: [60, 25],
      arms: [{ seam: 1, u: 60, sense: -1, direction: Math.PI }],
      through: null,
      onOutline: true,
    },
  ],
  patches: [
    { id: 1, area: 1500, fabric: '#6d7743', boundary: box(0, 0, 60, 25), holes: [] },
    { id: 2, area: 1500, fabric: null, boundary: box(0, 25, 60, 50), holes: [] },
  ],
};
