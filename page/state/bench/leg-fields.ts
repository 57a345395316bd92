import type { LegKind } from '../../../src/stitches/stitch.js';
import type { Arithmetic, LegRecord } from '../../../src/stitches/stitch-record.js';

/** The points that a kind of leg has, and what they are called. */
const ENDS: Readonly<Record<LegKind, readonly (readonly [string, string])[]>> = {
  straight: [
    ['from', 'From'],
    ['to', 'To'],
  ],
  curve: [
    ['from', 'From'],
    ['to', 'To'],
  ],
  cord: [
    ['from', 'From'],
    ['to', 'To'],
  ],
  under: [
    ['from', 'From'],
    ['to', 'To'],
  ],
  loop: [
    ['base', 'Base'],
    ['tip', 'Tip'],
  ],
  petal: [
    ['base', 'Base'],
    ['tip', 'Tip'],
  ],
  knot: [['at', 'At']],
};

export interface PointField {
  readonly field: string;
  readonly title: string;
  readonly value: string;
}

export const pointFields = (leg: LegRecord): PointField[] =>
  ENDS[leg.kind].map(([field, title]) => ({
    field,
    title,
    value: String((leg as unknown as Record<string, unknown>)[field]),
  }));

/** The leg with one of its fields written anew; an empty one that it may do without is left out. */
export function fieldWritten(leg: LegRecord, field: string, value: unknown): LegRecord {
  const { [field]: _, ...rest } = leg as unknown as Record<string, unknown>;
  const isEmpty = value === '' || value === null || (Array.isArray(value) && value.length === 0);
  const isNeeded = [...ENDS[leg.kind].map(([name]) => name), 'width', 'size', 'name'].includes(field);
  if (isEmpty) return isNeeded ? leg : (rest as unknown as LegRecord);
  // where it stood, it stands
  return { ...leg, [field]: value } as unknown as LegRecord;
}

/** What bends a leg: points that pull it, or points that it is led through. */
export type Bend = 'via' | 'through';

export const bendsWith = (leg: LegRecord): readonly Bend[] =>
  leg.kind === 'under' ? ['via'] : leg.kind === 'curve' || leg.kind === 'cord' ? ['via', 'through'] : [];

export function bendOf(leg: LegRecord): { readonly by: Bend; readonly points: readonly string[] } | null {
  if ('through' in leg && leg.through) return { by: 'through', points: leg.through };
  if ('via' in leg && leg.via) return { by: 'via', points: leg.via };
  return null;
}

export function bentBy(leg: LegRecord, by: Bend, points: readonly string[]): LegRecord {
  const { via: _, through: __, ...rest } = leg as LegRecord & { via?: unknown; through?: unknown };
  return (points.length ? { ...rest, [by]: points } : rest) as LegRecord;
}

/** The points of a list as it is typed. */
export const listed = (text: string): string[] => text.split(',').flatMap((one) => one.trim() || []);

export const sizeField = (leg: LegRecord): { field: 'width' | 'size'; value: Arithmetic } | null =>
  leg.kind === 'knot'
    ? { field: 'size', value: leg.size }
    : 'width' in leg
      ? { field: 'width', value: leg.width }
      : null;

const SIZES: Readonly<Partial<Record<LegKind, Arithmetic>>> = { loop: 2, petal: 1.6, cord: 1, knot: 1.6 };

/** The leg as another kind of leg, between the same points; what that kind does not know is left out. */
export function turnedInto(leg: LegRecord, kind: LegKind): LegRecord {
  if (kind === leg.kind) return leg;
  const ends = pointFields(leg).map(({ value }) => value);
  const [first, last] = [ends[0], ends[ends.length - 1]];
  const fields = ENDS[kind];
  const points =
    fields.length === 1 ? { [fields[0][0]]: last } : { [fields[0][0]]: first, [fields[1][0]]: last };
  const { name, keepsShapeAt, onlyAtEnd, thread } = leg;
  const wide = SIZES[kind];
  const size =
    wide === undefined ? {} : { [kind === 'knot' ? 'size' : 'width']: sizeField(leg)?.value ?? wide };
  const bend = bendOf(leg);
  const bends =
    bend && (kind === 'curve' || kind === 'cord' || (kind === 'under' && bend.by === 'via'))
      ? { [bend.by]: bend.points }
      : {};
  const share =
    leg.kind !== 'under' && kind !== 'under' && leg.share !== undefined ? { share: leg.share } : {};
  return {
    name,
    kind,
    ...points,
    ...bends,
    ...size,
    ...share,
    ...(keepsShapeAt !== undefined && { keepsShapeAt }),
    ...(onlyAtEnd && { onlyAtEnd }),
    ...(thread !== undefined && { thread }),
  } as unknown as LegRecord;
}
