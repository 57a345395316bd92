import { compileExpression, type Evaluate, ExpressionError } from './expression.js';
import { addMistake, type Mistake } from './mistake.js';
import type { Parameter } from './stitch.js';
import type { Arithmetic, FigureRecord, LegRecord, PlaceRecord } from './stitch-record.js';

/** A point of a file with copies written out: `tip[0]`, `tip[1]`, ... */
export interface WrittenPoint {
  readonly name: string;
  readonly place: PlaceRecord;
  /** which copy it is, from 0; 0 where there is only one */
  readonly i: number;
  /** where it stands in the file */
  readonly where: string;
}

export interface WrittenLeg {
  readonly name: string;
  readonly leg: LegRecord;
  readonly i: number;
  readonly where: string;
}

/** What decides how many copies there are: the values of the parameters that count. */
export type Counts = ReadonlyMap<string, number>;

/** Points, legs, or points that legs are led through, that one file may come to, copies counted. */
const MOST_COPIES = 2_000;

/** The counting parameters of a file at the values given, or at their defaults. */
export function countsOf(parameters: readonly Parameter[], values: Readonly<Record<string, number>>): Counts {
  return new Map(
    parameters
      .filter(({ unit }) => unit === 'count')
      .map(({ name, default: usual }) => [name, Object.hasOwn(values, name) ? values[name] : usual]),
  );
}

/** Writes out the copies of a file's points and legs. */
export class Copies {
  readonly points: readonly WrittenPoint[];
  readonly legs: readonly WrittenLeg[];
  private readonly slots: ReadonlyMap<string, number>;
  private readonly values: Float64Array;
  private readonly copied = { points: new Map<string, number>(), legs: new Map<string, number>() };
  private written = 0;
  private led = 0;

  constructor(
    record: FigureRecord,
    counts: Counts,
    private readonly mistakes: Mistake[],
  ) {
    this.slots = new Map(['i', ...counts.keys()].map((name, slot) => [name, slot]));
    this.values = Float64Array.from([0, ...counts.values()]);
    this.points = Object.entries(record.points).flatMap(([name, entry]): WrittenPoint[] => {
      const where = `points.${name}`;
      if (!('count' in entry)) return [{ name, place: entry, i: 0, where }];
      const count = this.count(entry.count, 1, where);
      this.copied.points.set(name, count);
      return numbered(count, (i) => ({ name: `${name}[${i}]`, place: entry.at, i, where: `${where}.at` }));
    });
    this.written = 0;
    this.legs = record.legs.flatMap((entry, k): WrittenLeg[] => {
      const where = `legs[${k}]`;
      if (!('legs' in entry))
        return [{ name: entry.name, leg: entry, i: 0, where: `${where} "${entry.name}"` }];
      const count = this.count(entry.count, entry.legs.length, where);
      for (const { name } of entry.legs) this.copied.legs.set(name, count);
      return numbered(count, (i) =>
        entry.legs.map((leg, m) => ({
          name: `${leg.name}[${i}]`,
          leg,
          i,
          where: `${where}.legs[${m}] "${leg.name}"`,
        })),
      ).flat();
    });
  }

  /** The name of one point or leg as written out: `tip[i + 1]` of copy 2 is `tip[3]`. */
  one(reference: string, i: number, where: string): string {
    const { name, index } = inParts(reference);
    if (index === null || index === '*') return reference;
    return `${name}[${this.whole(index, i, where)}]`;
  }

  /** The leg that one among copies means: of copied legs its own copy, unless it says another. */
  leg(reference: string, i: number, where: string): string {
    return this.copied.legs.has(reference) ? `${reference}[${i}]` : this.one(reference, i, where);
  }

  /** The points there are, for people: `middle, tip[0] to tip[4]`. */
  pointNames(): string {
    const names = new Set(this.points.map(({ name }) => inParts(name).name));
    return [...names]
      .map((name) => {
        const count = this.copied.points.get(name);
        return count === undefined ? name : `${name}[0] to ${name}[${count - 1}]`;
      })
      .join(', ');
  }

  /** The points a list names, in order; `spiral[*]` is all copies. */
  all(references: readonly string[], i: number, where: string): string[] {
    return references.flatMap((reference) => {
      const { name, index } = inParts(reference);
      const count = this.copied.points.get(name);
      const isOne = index !== '*' || count === undefined;
      this.led += isOne ? 1 : count;
      if (this.led > MOST_COPIES) {
        const right = `at most ${MOST_COPIES} in all legs and their copies`;
        addMistake(this.mistakes, where, 'with all copies legs are led through too many points', right);
        return [];
      }
      return isOne ? [this.one(reference, i, where)] : numbered(count, (k) => `${name}[${k}]`);
    });
  }

  /** The legs a name stands for: all its copies, when it names no single one. */
  legsNamed(reference: string, where: string): string[] {
    const count = this.copied.legs.get(reference);
    return count === undefined
      ? [this.one(reference, 0, where)]
      : numbered(count, (k) => `${reference}[${k}]`);
  }

  /** Copies of so many things; none when they would be too many, so that no file makes them without end. */
  private count(source: Arithmetic, things: number, where: string): number {
    const count = this.whole(source, 0, `${where}.count`);
    if (!(count >= 0 && count <= MOST_COPIES)) {
      addMistake(this.mistakes, `${where}.count`, `there are ${count} copies`, `0 to ${MOST_COPIES}`);
      return 0;
    }
    this.written += count * things;
    if (this.written <= MOST_COPIES) return count;
    const wrong = `with those before it there are ${this.written} copies`;
    addMistake(this.mistakes, `${where}.count`, wrong, `at most ${MOST_COPIES}`);
    return 0;
  }

  /** Whole numbers of copies and indices: arithmetic on counting parameters and `i`, rounded to the nearest. */
  private whole(source: Arithmetic, i: number, where: string): number {
    let value: Evaluate;
    try {
      value = compileExpression(source, this.slots);
    } catch (error) {
      if (!(error instanceof ExpressionError)) throw error;
      addMistake(
        this.mistakes,
        where,
        error.wrong,
        `${error.right}; how many copies there are can depend only on parameters whose unit is "count"`,
        error.unknown === null ? [] : [`quantities.${error.unknown}`],
      );
      return 0;
    }
    this.values[0] = i;
    return Math.round(value(this.values));
  }
}

/** The name of a point or leg, of a copy that of all: `tip` of `tip[3]`. */
export const withoutIndex = (reference: string): string => inParts(reference).name;

const numbered = <T>(count: number, make: (i: number) => T): T[] =>
  Array.from({ length: count }, (_, i) => make(i));

function inParts(reference: string): { name: string; index: string | null } {
  const found = /^([^[]*)\[([^\]]*)\]$/.exec(reference);
  return found ? { name: found[1], index: found[2].trim() } : { name: reference, index: null };
}
