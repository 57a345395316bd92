import { withoutIndex } from '../../../src/stitches/copies.js';
import type { LegRecord, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { type LegPlace, legChanged, legsOf } from './legs.js';

/** Where a leg is worked: in every repeat, there and once more where a row ends, or only where a row ends. */
export type Where = 'repeat' | 'again' | 'end';

export function whereOf({ closing = [] }: StitchRecord, { name, onlyAtEnd }: LegRecord): Where {
  if (onlyAtEnd) return 'end';
  return closing.some((one) => withoutIndex(one) === name) ? 'again' : 'repeat';
}

export function workedWhere(record: StitchRecord, place: LegPlace, where: Where): StitchRecord {
  const { name } = place.leg;
  const { closing = [], ...rest } = legChanged(record, place, ({ onlyAtEnd: _, ...leg }) =>
    where === 'end' ? { ...leg, onlyAtEnd: true } : (leg as LegRecord),
  );
  const others = closing.filter((one) => withoutIndex(one) !== name);
  // in the order of work, as the legs themselves
  const order = legsOf(record).map(({ leg }) => leg.name);
  const rank = (one: string) => order.indexOf(withoutIndex(one));
  const next = where === 'again' ? [...others, name].sort((a, b) => rank(a) - rank(b)) : others;
  return next.length ? { ...rest, closing: next } : rest;
}
