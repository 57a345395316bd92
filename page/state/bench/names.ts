import type {
  Arithmetic,
  LegRecord,
  PlaceRecord,
  StitchRecord,
} from '../../../src/stitches/stitch-record.js';

type Rename = (name: string) => string;

/** How things in a stitch's file are to be called from now on; what is left out stays. */
export interface Naming {
  readonly point?: Rename;
  readonly leg?: Rename;
  readonly thread?: Rename;
  /** parameters, measures, and `i` among copies */
  readonly quantity?: Rename;
  /** what stands in the brackets behind a point, of which copy it is; null for none. With what is named there already */
  readonly index?: (index: string | null, point: string) => string | null;
}

/** The arithmetic with its quantities renamed. */
export const arithmeticNamed = (written: Arithmetic, { quantity }: Naming): Arithmetic =>
  typeof written === 'number' || !quantity
    ? written
    : written.replace(/\b[a-z][A-Za-z0-9]*\b/g, (word) => quantity(word));

/** A point's name as it stands in a leg, such as `tip[i + 1]`. */
export function referenceNamed(reference: string, naming: Naming): string {
  const [, name, was] = /^([^[]*)(?:\[(.*)\])?$/.exec(reference)!;
  const renamed = was === undefined || was === '*' ? was : String(arithmeticNamed(was, naming));
  const index = naming.index ? naming.index(renamed ?? null, name) : renamed;
  return `${naming.point?.(name) ?? name}${index == null ? '' : `[${index}]`}`;
}

const legReference = (reference: string, { leg, ...naming }: Naming): string =>
  referenceNamed(reference, { quantity: naming.quantity, ...(leg && { point: leg }) });

const placeNamed = ([u, v]: PlaceRecord, naming: Naming): PlaceRecord => [
  arithmeticNamed(u, naming),
  arithmeticNamed(v, naming),
];

/** What a leg's fields hold: references to points, alone or as a list, and arithmetic. */
const POINT_FIELDS = ['from', 'to', 'base', 'tip', 'at', 'keepsShapeAt'] as const;
const LIST_FIELDS = ['via', 'through'] as const;
const SIZE_FIELDS = ['width', 'size'] as const;

export function legNamed(leg: LegRecord, naming: Naming): LegRecord {
  const next: Record<string, unknown> = { ...leg, name: naming.leg?.(leg.name) ?? leg.name };
  for (const field of POINT_FIELDS) {
    if (field in next) next[field] = referenceNamed(String(next[field]), naming);
  }
  for (const field of LIST_FIELDS) {
    if (field in next) next[field] = (next[field] as string[]).map((one) => referenceNamed(one, naming));
  }
  for (const field of SIZE_FIELDS) {
    if (field in next) next[field] = arithmeticNamed(next[field] as Arithmetic, naming);
  }
  if (leg.kind === 'under' && leg.beneath !== undefined) next.beneath = legReference(leg.beneath, naming);
  if (leg.thread !== undefined) next.thread = naming.thread?.(leg.thread) ?? leg.thread;
  return next as unknown as LegRecord;
}

/** The stitch with names changed wherever they stand in its file; all keeps its order. */
export function stitchNamed(record: StitchRecord, naming: Naming): StitchRecord {
  const { quantity, point, thread } = naming;
  const { measures, threads, seats, closing } = record;
  return {
    ...record,
    parameters: keys(record.parameters, quantity, (one) => one),
    ...(measures && { measures: keys(measures, quantity, (one) => arithmeticNamed(one, naming)) }),
    ...(threads && { threads: threads.map((name) => thread?.(name) ?? name) }),
    points: keys(record.points, point, (entry) =>
      'count' in entry
        ? { count: arithmeticNamed(entry.count, naming), at: placeNamed(entry.at, naming) }
        : placeNamed(entry, naming),
    ),
    legs: record.legs.map((entry) =>
      'legs' in entry
        ? {
            count: arithmeticNamed(entry.count, naming),
            legs: entry.legs.map((leg) => legNamed(leg, naming)),
          }
        : legNamed(entry, naming),
    ),
    joins: Object.fromEntries(
      Object.entries(record.joins).map(([here, next]) => [
        referenceNamed(here, naming),
        referenceNamed(next, naming),
      ]),
    ),
    ...(seats && {
      seats: keys(seats, undefined, (seat) =>
        typeof seat === 'string' ? referenceNamed(seat, naming) : placeNamed(seat, naming),
      ),
    }),
    ...(closing && { closing: closing.map((one) => legReference(one, naming)) }),
  };
}

const keys = <T, U>(
  from: Readonly<Record<string, T>>,
  name: Rename | undefined,
  value: (one: T) => U,
): Record<string, U> =>
  Object.fromEntries(Object.entries(from).map(([key, one]) => [name?.(key) ?? key, value(one)]));

const instead =
  (was: string, is: string): Rename =>
  (name) =>
    name === was ? is : name;

/** Names as the schema of stitch files has them. */
const PLACE = /^[A-Za-z][A-Za-z0-9 -]{0,40}$/;
const QUANTITY = /^[a-z][A-Za-z0-9]{0,30}$/;
/** What arithmetic says by itself. */
export const RESERVED = 'pi length i min max abs sqrt sin cos tan round floor ceil'.split(' ');

export type Kind = 'point' | 'leg' | 'thread' | 'quantity' | 'seat';

/** The names of a kind that there are, legs among copies too. */
export function namesOf(record: StitchRecord, kind: Kind): string[] {
  switch (kind) {
    case 'point':
      return Object.keys(record.points);
    case 'leg':
      return record.legs.flatMap((entry) => ('legs' in entry ? entry.legs : [entry]).map(({ name }) => name));
    case 'thread':
      return [...(record.threads ?? [])];
    case 'seat':
      return Object.keys(record.seats ?? {});
    default:
      return [...Object.keys(record.parameters), ...Object.keys(record.measures ?? {}), ...RESERVED];
  }
}

/** Whether something can be called so: a name of its own, as files have them. */
export const canBeCalled = (record: StitchRecord, kind: Kind, name: string): boolean =>
  (kind === 'quantity' ? QUANTITY : kind === 'thread' || kind === 'leg' ? /^.{1,40}$/ : PLACE).test(name) &&
  !namesOf(record, kind).includes(name);

/** The stitch with one thing in it called otherwise; as it was where that cannot be. */
export function renamed(record: StitchRecord, kind: Kind, was: string, to: string): StitchRecord {
  const name = to.trim();
  if (!canBeCalled(record, kind, name)) return record;
  if (kind === 'seat')
    return { ...record, seats: keys(record.seats ?? {}, instead(was, name), (one) => one) };
  return stitchNamed(record, { [kind]: instead(was, name) });
}
