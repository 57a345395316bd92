import type { Seam, SeamMap } from '../block/seam-map.js';
import { type Box, squareAt } from '../geometry/box.js';
import { polylineLength } from '../geometry/polyline.js';
import { spotsAlong } from './label-spots.js';
import type { Place, Plate } from './plate-room.js';

/** Shares of a seam's length at which its number may stand, the best first. */
const SHARES = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.2, 0.8];

/** The numbers of all seams, each to be laid on its seam. @param sizeOf a plate with a number */
export const seamPlates = (
  { seams }: SeamMap,
  sizeOf: (id: number) => Pick<Plate, 'width' | 'height'>,
): Plate[] => seams.map((seam) => ({ ...sizeOf(seam.id), places: numberPlaces(seam) }));

/** Where the number of a seam may stand: near its middle, or else in the middle of a stretch between two junctions, the longest first. */
function numberPlaces({ points, crossings }: Seam): Place[] {
  const long = polylineLength(points);
  const at = [0, ...crossings.map(({ u }) => u), long];
  const stretches = at.slice(1).map((to, i) => ({ length: to - at[i], share: (to + at[i]) / 2 / long }));
  const middles = stretches.sort((a, b) => b.length - a.length).map(({ share }) => share);
  return spotsAlong(points, [...SHARES, ...middles]).map(({ at: place }): Place => place);
}

/** All seams as a row of small boxes. @param step from one to the next, mm */
export const seamBoxes = ({ seams }: SeamMap, step: number): Box[] =>
  seams.flatMap(({ points }) => {
    const many = Math.max(1, Math.ceil(polylineLength(points) / step));
    return spotsAlong(
      points,
      Array.from({ length: many }, (_, i) => (i + 0.5) / many),
    ).map(({ at }) => squareAt(at, step / 8));
  });

/** What is to be seen of each junction, so that no plate hides where seams meet. @param half of a side, mm */
export const junctionBoxes = ({ junctions }: SeamMap, half: number): Box[] =>
  junctions.map(({ at }) => squareAt(at, half));
