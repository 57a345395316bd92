import type { Arithmetic, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { plusDistance, plusShare, shareOf, usualSizes } from './arithmetic.js';
import { type Spot, tiesOf } from './ties.js';

/**
 * The stitch with one of its points moved by (du, dv) mm at the usual sizes, and with it what hangs on it. A coordinate
 * keeps what is written in it: a plain share of length or width becomes another share, all else gets a distance behind it.
 * Copies of a point move alike.
 * @param spots where its points lie now
 */
export function pointMoved(
  record: StitchRecord,
  spots: readonly Spot[],
  name: string,
  du: number,
  dv: number,
): StitchRecord {
  if (!Object.hasOwn(record.points, name)) return record;
  const ties = [...tiesOf(record, spots, name)];
  const along = alike(ties.map(([key]) => ({ written: placeOf(record, key)[0], by: du })));
  const across = alike(ties.map(([key, sign]) => ({ written: placeOf(record, key)[1], by: dv * sign })));
  const moved = ties.map(([key], i) => [key, withPlace(record.points[key], [along[i], across[i]])]);
  return { ...record, points: { ...record.points, ...Object.fromEntries(moved) } };

  /** All in the same way, so that what is one hole is one at every size. */
  function alike(parts: readonly { written: Arithmetic; by: number }[]): Arithmetic[] {
    const [measure] = parts.map(({ written }) => shareOf(written));
    const areShares = measure !== null && parts.every(({ written }) => shareOf(written) === measure);
    return parts.map(({ written, by }) =>
      by === 0 ? written : areShares ? plusShare(written, by, usualSizes(record)) : plusDistance(written, by),
    );
  }
}

export type PointEntry = StitchRecord['points'][string];

/** What is written of a point: [u, v], of copies as one. */
export const placeOf = ({ points }: StitchRecord, name: string): readonly [Arithmetic, Arithmetic] =>
  placeIn(points[name]);

const placeIn = (entry: PointEntry): readonly [Arithmetic, Arithmetic] =>
  'count' in entry ? entry.at : entry;

const withPlace = (entry: PointEntry, at: readonly [Arithmetic, Arithmetic]): PointEntry =>
  'count' in entry ? { ...entry, at } : at;

/** The stitch with a coordinate written anew by the maker. @param axis 0 along, 1 across */
export function coordinateWritten(
  record: StitchRecord,
  name: string,
  axis: 0 | 1,
  written: Arithmetic,
): StitchRecord {
  const [u, v] = placeOf(record, name);
  const at = axis === 0 ? ([written, v] as const) : ([u, written] as const);
  return { ...record, points: { ...record.points, [name]: withPlace(record.points[name], at) } };
}
