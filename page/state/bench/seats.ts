import type { PlaceRecord, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { freeName } from './legs.js';

/** The stitch with a seat on a point; it goes by the point's name where it can. */
export function seatAdded(record: StitchRecord, point: string): StitchRecord {
  const wanted = point.replace(/\[(\d+)\]/, ' $1');
  const name = freeName(wanted, Object.keys(record.seats ?? {}));
  return { ...record, seats: { ...record.seats, [name]: point } };
}

export function seatRemoved(record: StitchRecord, name: string): StitchRecord {
  const { seats = {}, ...rest } = record;
  const left = Object.entries(seats).filter(([key]) => key !== name);
  return left.length ? { ...rest, seats: Object.fromEntries(left) } : rest;
}

/** The stitch with a seat that is on no point, half-way along a repeat on the seam, to be laid where it belongs. */
export function freeSeatAdded(record: StitchRecord): StitchRecord {
  const name = freeName('window', Object.keys(record.seats ?? {}));
  return seatWritten(record, name, ['length / 2', 0]);
}

/** The stitch with a seat elsewhere: on a point, or at a place of its own. */
export const seatWritten = (
  record: StitchRecord,
  name: string,
  seat: string | PlaceRecord,
): StitchRecord => ({
  ...record,
  seats: { ...record.seats, [name]: seat },
});
