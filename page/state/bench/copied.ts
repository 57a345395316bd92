import type { Arithmetic, LegRecord, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { arithmeticNamed, legNamed, type Naming, stitchNamed } from './names.js';

type Entry = StitchRecord['legs'][number];

/** Copy 0 alone is left: what was said by `i` is said by 0. */
const FIRST: Naming = {
  quantity: (name) => (name === 'i' ? '0' : name),
};

/** How many copies of a point there are: arithmetic, or null for one that has none. */
export function copiesOf(record: StitchRecord, point: string): Arithmetic | null {
  const entry = record.points[point];
  return 'count' in entry ? entry.count : null;
}

/**
 * The stitch with so many copies of a point. Legs that are worked as often go to the point of their own copy, all else to the
 * first; without copies the first is what is left.
 */
export function pointCopied(record: StitchRecord, point: string, count: Arithmetic | null): StitchRecord {
  const entry = record.points[point];
  const isCopied = 'count' in entry;
  if (count !== null && isCopied) {
    return { ...record, points: { ...record.points, [point]: { ...entry, count } } };
  }
  if (count === null) {
    if (!isCopied) return record;
    const at = entry.at.map((one) => arithmeticNamed(one, FIRST)) as [Arithmetic, Arithmetic];
    const points = { ...record.points, [point]: at };
    return stitchNamed({ ...record, points }, { index: (index, name) => (name === point ? null : index) });
  }
  if (isCopied) return record;
  const points = { ...record.points, [point]: { count, at: entry } };
  const indexed = (copy: string): Naming => ({
    index: (index, name) => (name === point ? (index ?? copy) : index),
  });
  const rest = stitchNamed({ ...record, points, legs: [] }, indexed('0'));
  const legs = record.legs.map(
    (one): Entry =>
      'legs' in one
        ? {
            ...one,
            legs: one.legs.map((leg) => legNamed(leg, indexed(isSame(one.count, count) ? 'i' : '0'))),
          }
        : legNamed(one, indexed('0')),
  );
  return { ...rest, legs };
}

const isSame = (a: Arithmetic, b: Arithmetic): boolean => String(a).trim() === String(b).trim();

/**
 * The stitch with legs worked so many times over; null for once. A leg that went to the first of as many copies of a point
 * goes to that of its own copy.
 * @param at which entry of the list of legs
 */
export function legsCopied(record: StitchRecord, at: number, count: Arithmetic | null): StitchRecord {
  const legs = record.legs.flatMap((entry, k): Entry[] => {
    if (k !== at) return [entry];
    if (count === null) return 'legs' in entry ? entry.legs.map(once) : [entry];
    if ('legs' in entry) return [{ ...entry, count }];
    return [{ count, legs: [legNamed(entry, ownCopy(record, count))] }];
  });
  return { ...record, legs };
}

const ownCopy = ({ points }: StitchRecord, count: Arithmetic): Naming => ({
  index: (index, name) => {
    const entry = points[name];
    const isOwn = index === '0' && entry && 'count' in entry && isSame(entry.count, count);
    return isOwn ? 'i' : index;
  },
});

const once = (leg: LegRecord): LegRecord => legNamed(leg, FIRST);

/** The stitch with a leg worked among the copies before it. */
export function legTakenIn(record: StitchRecord, at: number): StitchRecord {
  const [group, leg] = [record.legs[at - 1], record.legs[at]];
  if (!group || !('legs' in group) || 'legs' in leg) return record;
  const legs = [...record.legs];
  legs.splice(at - 1, 2, { ...group, legs: [...group.legs, legNamed(leg, ownCopy(record, group.count))] });
  return { ...record, legs };
}

/** The stitch with a leg worked once, after the copies that it was among. */
export function legLetOut(record: StitchRecord, at: number, among: number): StitchRecord {
  const group = record.legs[at];
  if (!('legs' in group)) return record;
  const left = group.legs.filter((_, m) => m !== among);
  const legs = [...record.legs];
  legs.splice(at, 1, ...(left.length ? [{ ...group, legs: left }] : []), once(group.legs[among]));
  return { ...record, legs };
}
