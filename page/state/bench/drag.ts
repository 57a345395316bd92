import { withoutIndex } from '../../../src/stitches/copies.js';
import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import type { Handle } from './handles.js';
import { legChanged, legsOf, widened } from './legs.js';
import { pointMoved } from './move-point.js';
import type { Spot } from './ties.js';

/** The stitch with what has the handle moved by (du, dv) mm at the usual sizes. */
export function dragged(
  record: StitchRecord,
  spots: readonly Spot[],
  { name, widens }: Handle,
  du: number,
  dv: number,
): StitchRecord {
  if (!widens) return pointMoved(record, spots, withoutIndex(name), du, dv);
  const place = legsOf(record).find(({ leg }) => leg.name === widens.leg);
  // both edges move, so that the middle stays
  const by = 2 * (du * widens.u + dv * widens.v);
  return place && by !== 0 ? legChanged(record, place, (leg) => widened(leg, by)) : record;
}
