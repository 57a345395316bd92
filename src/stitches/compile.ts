import { compileExpression, type Evaluate, ExpressionError } from './expression.js';
import type { LegKind, Parameter } from './stitch.js';
import type { Arithmetic, LegRecord, PlaceRecord, StitchRecord } from './stitch-record.js';

/** A stitch file with its arithmetic compiled and its names resolved: all that building a unit needs. */
export interface Plan {
  readonly name: string;
  readonly parameters: readonly Parameter[];
  readonly glide: boolean;
  /** name, slot and rule of each measure, in order; slots hold parameters, then `length`, then measures */
  readonly measures: readonly { readonly name: string; readonly value: Evaluate }[];
  readonly points: readonly PlannedPoint[];
  /** points that legs begin, end or turn back at: node i of a unit is points[nodes[i]] */
  readonly nodes: readonly number[];
  readonly legs: readonly PlannedLeg[];
  /** node indices */
  readonly joins: readonly (readonly [number, number])[];
  /** indices into the file's legs */
  readonly closing: ReadonlySet<number>;
  readonly seats: readonly PlannedPoint[];
  /** the least value a build takes for each parameter, and the greatest */
  readonly ranges: readonly (readonly [number, number])[];
}

export interface PlannedPoint {
  readonly name: string;
  readonly u: Evaluate;
  readonly v: Evaluate;
}

export interface PlannedLeg {
  readonly name: string;
  readonly kind: LegKind;
  /** point indices */
  readonly from: number;
  readonly to: number;
  readonly via: readonly number[];
  /** width of a loop, petal or cord, size of a knot */
  readonly size: Evaluate;
  readonly share: number;
  /** point index, -1 when the leg bends with the line */
  readonly anchor: number;
  readonly onlyAtEnd: boolean;
  /** leg whose line an under-leg follows, -1 when it has one of its own */
  readonly beneath: number;
}

/** A mistake in a stitch file: the place inside it, what is wrong, what would be right. */
export interface Mistake {
  readonly place: string;
  readonly wrong: string;
  readonly right: string;
}

/** Fitted repeats may differ from the one asked for by these factors. */
export const SHORTEST_FIT = 0.8;
export const LONGEST_FIT = 1.25;

/**
 * Compiles a record whose shape is right. Mistakes of meaning (unknown names, arithmetic that cannot be read) are added
 * to `mistakes`; the plan is sound only when there are none.
 */
export function compilePlan(name: string, record: StitchRecord, mistakes: Mistake[]): Plan {
  const parameters = Object.entries(record.parameters).map(([key, rest]) => ({ name: key, ...rest }));
  const slots = new Map(parameters.map((parameter, slot) => [parameter.name, slot]));
  slots.set('length', parameters.length);

  const arithmetic = (source: Arithmetic, place: string): Evaluate => {
    try {
      return compileExpression(source, slots);
    } catch (error) {
      if (!(error instanceof ExpressionError)) throw error;
      mistakes.push({ place, wrong: error.wrong, right: error.right });
      return () => Number.NaN;
    }
  };
  const planned = (key: string, [u, v]: PlaceRecord, place: string): PlannedPoint => ({
    name: key,
    u: arithmetic(u, `${place}[0]`),
    v: arithmetic(v, `${place}[1]`),
  });

  const measures = Object.entries(record.measures ?? {}).map(([key, source]) => {
    const value = arithmetic(source, `measures.${key}`);
    slots.set(key, slots.size);
    return { name: key, value };
  });
  const points = Object.entries(record.points).map(([key, place]) => planned(key, place, `points.${key}`));
  const pointIndex = new Map(points.map((point, i) => [point.name, i]));

  const pointNamed = (key: string, place: string): number => {
    const found = pointIndex.get(key);
    if (found !== undefined) return found;
    mistakes.push({
      place,
      wrong: `there is no point "${key}"`,
      right: `the points are ${[...pointIndex.keys()].join(', ')}`,
    });
    return 0;
  };

  const legs = record.legs.map((leg, i): PlannedLeg => {
    const place = `legs[${i}] "${leg.name}"`;
    const [from, to] = endNames(leg);
    const via = 'via' in leg ? (leg.via ?? []) : [];
    return {
      name: leg.name,
      kind: leg.kind,
      from: pointNamed(from, place),
      to: pointNamed(to, place),
      via: via.map((key) => pointNamed(key, `${place} via`)),
      size: arithmetic(sizeOf(leg), place),
      share: leg.share ?? (leg.kind === 'under' ? 0 : 1),
      anchor: leg.keepsShapeAt === undefined ? -1 : pointNamed(leg.keepsShapeAt, `${place} keepsShapeAt`),
      onlyAtEnd: leg.onlyAtEnd ?? false,
      beneath:
        'beneath' in leg && leg.beneath !== undefined ? coverOf(record.legs, leg, place, mistakes) : -1,
    };
  });

  const nodes: number[] = [];
  const nodeOf = new Map<number, number>();
  for (const leg of legs) {
    for (const point of [leg.from, leg.to, leg.anchor]) {
      if (point < 0 || nodeOf.has(point)) continue;
      nodeOf.set(point, nodes.length);
      nodes.push(point);
    }
  }
  const joins = Object.entries(record.joins).map(([here, next]): [number, number] => {
    const ends = [here, next].map((key) => nodeOf.get(pointNamed(key, 'joins')));
    const missing = ends.indexOf(undefined);
    if (missing >= 0 && pointIndex.has([here, next][missing])) {
      mistakes.push({
        place: 'joins',
        wrong: `no leg begins or ends at "${[here, next][missing]}"`,
        right: 'join points where legs begin or end',
      });
    }
    return [ends[0] ?? 0, ends[1] ?? 0];
  });

  const closing = new Set<number>();
  for (const key of record.closing ?? []) {
    const i = legs.findIndex((leg) => leg.name === key);
    if (i >= 0 && !legs[i].onlyAtEnd) closing.add(i);
    else if (i >= 0) {
      mistakes.push({
        place: 'closing',
        wrong: `"${key}" is worked only at the end`,
        right: 'leave it out of this list; it closes a row anyway',
      });
    } else {
      mistakes.push({
        place: 'closing',
        wrong: `there is no leg "${key}"`,
        right: `the legs are ${legs.map((leg) => leg.name).join(', ')}`,
      });
    }
  }

  const seats = Object.entries(record.seats ?? {}).map(([key, seat]) =>
    typeof seat === 'string'
      ? { ...points[pointNamed(seat, `seats.${key}`)], name: key }
      : planned(key, seat, `seats.${key}`),
  );

  return {
    name,
    parameters,
    glide: record.symmetry === 'glide',
    measures,
    points,
    nodes,
    legs,
    joins,
    closing,
    seats,
    ranges: parameters.map((parameter) => buildRange(parameter, record.smallest)),
  };
}

/** A fit may lengthen or shorten a repeat, and make a repeat or a width smaller, down to the smallest good size. */
function buildRange({ name, min, max }: Parameter, smallest: StitchRecord['smallest']): [number, number] {
  if (name === 'repeat') return [Math.min(min, smallest.repeat) * SHORTEST_FIT, max * LONGEST_FIT];
  if (name === 'width') return [Math.min(min, smallest.width), max];
  return [min, max];
}

/** The leg that an under-leg lies beneath. */
function coverOf(
  legs: readonly LegRecord[],
  leg: LegRecord & { beneath?: string },
  place: string,
  mistakes: Mistake[],
): number {
  const ends = endNames(leg);
  const found = legs.findIndex(
    ({ name, kind }) => name === leg.beneath && kind !== 'under' && kind !== 'loop',
  );
  if (found >= 0 && endNames(legs[found]).every((end) => ends.includes(end))) return found;
  mistakes.push({
    place: `${place} beneath`,
    wrong: `"${leg.beneath}" is no leg between "${ends[0]}" and "${ends[1]}"`,
    right: 'the name of a straight, curve, petal or cord with the same two ends',
  });
  return -1;
}

function endNames(leg: LegRecord): [from: string, to: string] {
  switch (leg.kind) {
    case 'loop':
    case 'petal':
      return [leg.base, leg.tip];
    case 'knot':
      return [leg.at, leg.at];
    default:
      return [leg.from, leg.to];
  }
}

function sizeOf(leg: LegRecord): Arithmetic {
  switch (leg.kind) {
    case 'knot':
      return leg.size;
    case 'loop':
    case 'petal':
    case 'cord':
      return leg.width;
    default:
      return 0;
  }
}
