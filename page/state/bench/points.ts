import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { asShare, usualSizes } from './arithmetic.js';
import { freeName, type LegPlace, legChanged, legsOf, pointsOfLeg } from './legs.js';

/** The stitch with one more point, written as shares of its length and width, so that it grows with them; and its name. */
export function pointAdded(
  record: StitchRecord,
  u: number,
  v: number,
  called = 'hole',
): { record: StitchRecord; name: string } {
  const sizes = usualSizes(record);
  const name = freeName(called, Object.keys(record.points));
  const at = [asShare('length', u, sizes), asShare('width', v, sizes)] as const;
  return { record: { ...record, points: { ...record.points, [name]: at } }, name };
}

/** The stitch with a curve, a cord or a thread behind the cloth pulled by one more point, in the middle of its ends. */
export function bendAdded(
  record: StitchRecord,
  place: LegPlace,
  middle: readonly [number, number],
): { record: StitchRecord; name: string } {
  const added = pointAdded(record, middle[0], middle[1], 'bend');
  const changed = legChanged(added.record, place, (leg) =>
    leg.kind === 'curve' || leg.kind === 'cord' || leg.kind === 'under'
      ? 'through' in leg && leg.through
        ? { ...leg, through: [...leg.through, added.name] }
        : { ...leg, via: [...(leg.via ?? []), added.name] }
      : leg,
  );
  return { record: changed, name: added.name };
}

/** Whether a leg can be bent by one more point. */
export const canBend = ({ leg }: LegPlace): boolean =>
  (leg.kind === 'under' && leg.beneath === undefined && (leg.via?.length ?? 0) < 8) ||
  ((leg.kind === 'curve' || leg.kind === 'cord') && ((leg.via?.length ?? 0) < 2 || Boolean(leg.through)));

/** Points that only bend a leg, and are no holes. */
export function bendsOf(record: StitchRecord): ReadonlySet<string> {
  const holes = new Set(
    legsOf(record).flatMap(({ leg }) => pointsOfLeg(leg).slice(0, leg.kind === 'knot' ? 1 : 2)),
  );
  return new Set(Object.keys(record.points).filter((name) => !holes.has(name)));
}
