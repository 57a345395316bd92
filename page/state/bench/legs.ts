import { withoutIndex } from '../../../src/stitches/copies.js';
import type { LegKind } from '../../../src/stitches/stitch.js';
import type { LegRecord, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { plusDistance } from './arithmetic.js';

type Entry = StitchRecord['legs'][number];

/** How the kinds of leg are called, in the order in which they are wanted. */
export const KINDS: readonly (readonly [LegKind, string])[] = [
  ['straight', 'straight'],
  ['curve', 'curve'],
  ['loop', 'loop'],
  ['petal', 'petal'],
  ['knot', 'knot'],
  ['cord', 'cord'],
  ['under', 'behind the cloth'],
];

/** A leg as it lies in its file: its place in the list, and among copies the place in theirs. */
export interface LegPlace {
  readonly at: number;
  readonly among: number | null;
  readonly leg: LegRecord;
}

export const legsOf = ({ legs }: StitchRecord): LegPlace[] =>
  legs.flatMap((entry, at): LegPlace[] =>
    'legs' in entry
      ? entry.legs.map((leg, among) => ({ at, among, leg }))
      : [{ at, among: null, leg: entry }],
  );

/** The points a leg goes by, as it names them: ends first, then what bends it. */
export function pointsOfLeg(leg: LegRecord): string[] {
  const ends =
    leg.kind === 'knot'
      ? [leg.at]
      : leg.kind === 'loop' || leg.kind === 'petal'
        ? [leg.base, leg.tip]
        : [leg.from, leg.to];
  const via = 'via' in leg ? (leg.via ?? []) : [];
  const through = 'through' in leg ? (leg.through ?? []) : [];
  return [...ends, ...via, ...through].map(withoutIndex);
}

/** The stitch with one leg changed. */
export function legChanged(
  record: StitchRecord,
  { at, among }: Pick<LegPlace, 'at' | 'among'>,
  change: (leg: LegRecord) => LegRecord,
): StitchRecord {
  const legs = record.legs.map((entry, k): Entry => {
    if (k !== at) return entry;
    if (!('legs' in entry)) return change(entry);
    return { ...entry, legs: entry.legs.map((leg, m) => (m === among ? change(leg) : leg)) };
  });
  return { ...record, legs };
}

/** The stitch with a leg, or a set of copies, worked sooner (-1) or later (1). */
export function legShifted(record: StitchRecord, at: number, by: -1 | 1): StitchRecord {
  const to = at + by;
  if (to < 0 || to >= record.legs.length) return record;
  const legs = [...record.legs];
  [legs[at], legs[to]] = [legs[to], legs[at]];
  return { ...record, legs };
}

/** The stitch with one more leg, worked last. @param ends names of points */
export function legAdded(
  record: StitchRecord,
  kind: LegKind,
  [from, to]: readonly [string, string],
): StitchRecord {
  const name = freeName(
    kind === 'under' ? 'dip' : kind === 'straight' ? 'arm' : kind,
    legsOf(record).map(({ leg }) => leg.name),
  );
  return { ...record, legs: [...record.legs, fresh(kind, name, from, to)] };
}

function fresh(kind: LegKind, name: string, from: string, to: string): LegRecord {
  switch (kind) {
    case 'loop':
      return { name, kind, base: from, tip: to, width: 2 };
    case 'petal':
      return { name, kind, base: from, tip: to, width: 1.6 };
    case 'knot':
      return { name, kind, at: to, size: 1.6 };
    case 'cord':
      return { name, kind, from, to, width: 1 };
    default:
      return { name, kind, from, to };
  }
}

/** A name like the one wanted that is not among those taken. */
export function freeName(wanted: string, taken: readonly string[]): string {
  let name = wanted;
  for (let k = 2; taken.includes(name); k++) name = `${wanted} ${k}`;
  return name;
}

/** The stitch without a leg; points that nothing else names go with it. */
export function legRemoved(record: StitchRecord, { at, among, leg }: LegPlace): StitchRecord {
  const legs = record.legs.flatMap((entry, k): Entry[] => {
    if (k !== at) return [entry];
    if (!('legs' in entry) || entry.legs.length === 1) return [];
    return [{ ...entry, legs: entry.legs.filter((_, m) => m !== among) }];
  });
  const uncovered = legs.map((entry): Entry => {
    if ('legs' in entry) return { ...entry, legs: entry.legs.map(without) };
    return without(entry);
  });
  const { closing, ...rest } = record;
  const left = closing?.filter((name) => withoutIndex(name) !== leg.name);
  const next = { ...rest, legs: uncovered, ...(left?.length && { closing: left }) };
  return pointsDropped(next, pointsOfLeg(leg));

  function without(one: LegRecord): LegRecord {
    if (one.kind !== 'under' || one.beneath === undefined || withoutIndex(one.beneath) !== leg.name)
      return one;
    const { beneath: _, ...bare } = one;
    return bare;
  }
}

/** The stitch without those of the points that nothing in it names any longer. */
function pointsDropped(record: StitchRecord, names: readonly string[]): StitchRecord {
  const used = new Set([
    ...legsOf(record).flatMap(({ leg }) => [...pointsOfLeg(leg), withoutIndex(leg.keepsShapeAt ?? '')]),
    ...Object.entries(record.joins).flat().map(withoutIndex),
    ...Object.values(record.seats ?? {}).map((seat) => (typeof seat === 'string' ? withoutIndex(seat) : '')),
  ]);
  const kept = Object.entries(record.points).filter(([name]) => used.has(name) || !names.includes(name));
  return { ...record, points: Object.fromEntries(kept) };
}

/** A leg wider by a distance: the belly of a loop, satin, a knot. */
export function widened(leg: LegRecord, by: number): LegRecord {
  if (leg.kind === 'knot') return { ...leg, size: plusDistance(leg.size, by) };
  return 'width' in leg ? { ...leg, width: plusDistance(leg.width, by) } : leg;
}

/** How often a leg is sewn where its row has three passes. */
export const PASSES = 3;

export const passesOf = (leg: LegRecord): number =>
  Math.round((leg.share ?? (leg.kind === 'under' ? 0 : 1)) * PASSES);

export function withPasses(leg: LegRecord, passes: number): LegRecord {
  const { share: _, ...rest } = leg;
  const usual = leg.kind === 'under' ? 0 : PASSES;
  return passes === usual ? rest : { ...rest, share: Math.round((passes / PASSES) * 100) / 100 };
}
