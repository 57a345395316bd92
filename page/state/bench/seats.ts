import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
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
