import { withoutIndex } from '../../../src/stitches/copies.js';
import type { Arithmetic, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { placeOf } from './move-point.js';

/**
 * The stitch with a point of each unit that is a point of the next one: the same hole. A point of this unit that is no copy is
 * laid there, so that the join holds at every size; in a glide the next unit has left and right exchanged.
 */
export function joinAdded(record: StitchRecord, here: string, next: string): StitchRecord {
  if (here === '' || next === '' || Object.hasOwn(record.joins, here)) return record;
  const joined = { ...record, joins: { ...record.joins, [here]: next } };
  const there = withoutIndex(next);
  const isPlain = here === withoutIndex(here) && next === there && here !== there;
  const areKnown = [here, there].every((name) => Object.hasOwn(record.points, name));
  if (!isPlain || !areKnown || 'count' in record.points[here] || 'count' in record.points[there])
    return joined;
  const [u, v] = placeOf(record, there);
  const at = [onByLength(u), record.symmetry === 'glide' ? opposite(v) : v] as const;
  return { ...joined, points: { ...record.points, [here]: at } };
}

export function joinRemoved(record: StitchRecord, here: string): StitchRecord {
  const { [here]: _, ...joins } = record.joins;
  return { ...record, joins };
}

const onByLength = (u: Arithmetic): Arithmetic => (u === 0 ? 'length' : `length + ${wrapped(u)}`);

const opposite = (v: Arithmetic): Arithmetic => (typeof v === 'number' ? 0 - v : `-${wrapped(v)}`);

const wrapped = (written: Arithmetic): string =>
  /^[\w.]+$/.test(String(written)) ? `${written}` : `(${written})`;
