import { Arithmetics, type PlannedPoint } from './arithmetics.js';
import { Copies, type Counts, type WrittenLeg, withoutIndex } from './copies.js';
import type { Evaluate } from './expression.js';
import { type Bend, bendOf, endNames, sizeOf } from './leg-facts.js';
import { addMistake, type Mistake } from './mistake.js';
import type { LegKind, Parameter } from './stitch.js';
import type { FigureRecord, StitchRecord } from './stitch-record.js';

/** A file with its copies written out, its arithmetic compiled and its names resolved: all that building a unit needs. */
export interface Plan {
  readonly name: string;
  readonly parameters: readonly Parameter[];
  readonly glide: boolean;
  /** name and rule of each measure, in order; slots hold parameters, then `length`, then `i`, then measures */
  readonly measures: readonly { readonly name: string; readonly value: Evaluate }[];
  readonly points: readonly PlannedPoint[];
  /** points that legs begin, end or turn back at: node i of a unit is points[nodes[i]] */
  readonly nodes: readonly number[];
  readonly legs: readonly PlannedLeg[];
  /** node indices */
  readonly joins: readonly (readonly [number, number])[];
  /** indices into `legs` */
  readonly closing: ReadonlySet<number>;
  readonly seats: readonly PlannedPoint[];
  /** the least value a build takes for each parameter, and the greatest */
  readonly ranges: readonly (readonly [number, number])[];
}

export interface PlannedLeg {
  readonly name: string;
  readonly kind: LegKind;
  /** point indices */
  readonly from: number;
  readonly to: number;
  readonly via: readonly number[];
  readonly bend: Bend;
  /** width of a loop, petal or cord, size of a knot */
  readonly size: Evaluate;
  readonly share: number;
  /** point index, -1 when the leg bends with the line */
  readonly anchor: number;
  readonly onlyAtEnd: boolean;
  /** leg whose line an under-leg follows, -1 when it has one of its own */
  readonly beneath: number;
  /** index into the file's threads */
  readonly thread: number;
}

/** Fitted repeats may differ from the one asked for by these factors. */
export const SHORTEST_FIT = 0.8;
export const LONGEST_FIT = 1.25;

/** The parameters of a file, in its order: parameter k has slot k. */
export const parametersOf = (record: FigureRecord): Parameter[] =>
  Object.entries(record.parameters).map(([name, rest]) => ({ name, ...rest }));

/**
 * Compiles a record whose shape is right, for one choice of its counting parameters. Mistakes of meaning (unknown names,
 * arithmetic that cannot be read) are added to `mistakes`; the plan is sound only when there are none.
 */
export function compilePlan(
  name: string,
  record: FigureRecord & Partial<StitchRecord>,
  counts: Counts,
  mistakes: Mistake[],
): Plan {
  const parameters = parametersOf(record);
  const arithmetic = new Arithmetics(parameters, mistakes);
  const measures = Object.entries(record.measures ?? {}).map(([key, source]) => ({
    name: key,
    value: arithmetic.measure(key, source),
  }));
  const copies = new Copies(record, counts, mistakes);
  const points = copies.points.map((point) =>
    arithmetic.place(point.name, point.place, point.where, point.i),
  );
  const pointIndex = new Map(points.map((point, i) => [point.name, i]));
  const pointNamed = (key: string, where: string): number => {
    const found = pointIndex.get(key);
    if (found !== undefined) return found;
    const right = `the points are ${copies.pointNames()}`;
    addMistake(mistakes, where, `there is no point "${key}"`, right, [`points.${withoutIndex(key)}`]);
    return 0;
  };

  const threads = record.threads ?? [];
  const legs = copies.legs.map((written): PlannedLeg => {
    const { leg, i, where } = written;
    const ends = endNames(leg).map((end) => pointNamed(copies.one(end, i, where), where));
    const { list, bend, part } = bendOf(leg, where, mistakes);
    return {
      name: written.name,
      kind: leg.kind,
      from: ends[0],
      to: ends[1],
      via: copies.all(list, i, where).map((key) => pointNamed(key, `${where} ${part}`)),
      bend,
      size: arithmetic.compile(sizeOf(leg), where, i),
      share: leg.share ?? (leg.kind === 'under' ? 0 : 1),
      anchor:
        leg.keepsShapeAt === undefined
          ? -1
          : pointNamed(copies.one(leg.keepsShapeAt, i, where), `${where} keepsShapeAt`),
      onlyAtEnd: leg.onlyAtEnd ?? false,
      beneath: coverOf(copies, written, mistakes),
      thread: leg.thread === undefined ? 0 : threadNamed(threads, leg.thread, where, mistakes),
    };
  });

  const nodes = nodesOf(legs);
  const nodeOf = new Map(nodes.map((point, node) => [point, node]));
  const joins = Object.entries(record.joins ?? {}).map(([here, next]): [number, number] => {
    const names = [here, next].map((key) => copies.one(key, 0, 'joins'));
    const ends = names.map((key) => nodeOf.get(pointNamed(key, 'joins')));
    const missing = ends.indexOf(undefined);
    if (missing >= 0 && pointIndex.has(names[missing])) {
      addMistake(
        mistakes,
        'joins',
        `no leg begins or ends at "${names[missing]}"`,
        'join points where legs begin or end',
        ['legs'],
      );
    }
    return [ends[0] ?? 0, ends[1] ?? 0];
  });

  const seats = Object.entries(record.seats ?? {}).map(([key, seat]) =>
    typeof seat === 'string'
      ? { ...points[pointNamed(copies.one(seat, 0, `seats.${key}`), `seats.${key}`)], name: key }
      : arithmetic.place(key, seat, `seats.${key}`, 0),
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
    closing: closingOf(record, copies, legs, mistakes),
    seats,
    ranges: parameters.map((parameter) => buildRange(parameter, record.smallest)),
  };
}

/** A fit may lengthen or shorten a repeat, and make sizes smaller, down to the smallest good one. */
function buildRange(
  { name, min, max }: Parameter,
  smallest: Readonly<Partial<Record<string, number>>> | undefined,
): [number, number] {
  // A parameter may be called as anything is that every object has: "constructor".
  const least = smallest && Object.hasOwn(smallest, name) ? Math.min(min, smallest[name]!) : min;
  return name === 'repeat' ? [least * SHORTEST_FIT, max * LONGEST_FIT] : [least, max];
}

/** Points that legs begin, end or keep their shape at, each once. */
function nodesOf(legs: readonly PlannedLeg[]): number[] {
  const nodes = new Set<number>();
  for (const { from, to, anchor } of legs) {
    nodes.add(from);
    nodes.add(to);
    if (anchor >= 0) nodes.add(anchor);
  }
  return [...nodes];
}

function threadNamed(threads: readonly string[], name: string, where: string, mistakes: Mistake[]): number {
  const found = threads.indexOf(name);
  if (found >= 0) return found;
  addMistake(
    mistakes,
    `${where} thread`,
    `there is no thread "${name}"`,
    threads.length
      ? `the threads are ${threads.join(', ')}`
      : 'name it in "threads", a list beside "parameters"',
    ['threads'],
  );
  return 0;
}

function closingOf(
  record: FigureRecord & Partial<StitchRecord>,
  copies: Copies,
  legs: readonly PlannedLeg[],
  mistakes: Mistake[],
): Set<number> {
  const closing = new Set<number>();
  const index = new Map(legs.map((leg, i) => [leg.name, i]));
  for (const key of (record.closing ?? []).flatMap((name) => copies.legsNamed(name, 'closing'))) {
    const i = index.get(key);
    if (i === undefined) {
      const names = legs.map((leg) => leg.name).join(', ');
      const by = [`legs.${withoutIndex(key)}`];
      addMistake(mistakes, 'closing', `there is no leg "${key}"`, `the legs are ${names}`, by);
    } else if (legs[i].onlyAtEnd) {
      const right = 'leave it out of this list; it closes a row anyway';
      addMistake(mistakes, 'closing', `"${key}" is worked only at the end`, right);
    } else closing.add(i);
  }
  return closing;
}

/** The leg that an under-leg lies beneath, -1 when it has a line of its own. */
function coverOf(copies: Copies, { leg, i, where }: WrittenLeg, mistakes: Mistake[]): number {
  if (!('beneath' in leg) || leg.beneath === undefined) return -1;
  const points = (other: WrittenLeg) =>
    endNames(other.leg).map((end) => copies.one(end, other.i, other.where));
  const ends = points({ name: leg.name, leg, i, where });
  const cover = copies.leg(leg.beneath, i, where);
  const found = copies.legs.findIndex(
    (other) => other.name === cover && other.leg.kind !== 'under' && other.leg.kind !== 'loop',
  );
  if (found >= 0 && points(copies.legs[found]).every((end) => ends.includes(end))) return found;
  addMistake(
    mistakes,
    `${where} beneath`,
    `"${cover}" is no leg between "${ends[0]}" and "${ends[1]}"`,
    'the name of a straight, curve, petal or cord with the same two ends',
    [`legs.${withoutIndex(cover)}`, ...ends.map((end) => `points.${withoutIndex(end)}`)],
  );
  return -1;
}
