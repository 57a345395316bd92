import type { Shape } from './shape.js';

/** Legs of one unit that should get equal passes. */
export interface SharedClasses {
  readonly count: number;
  /** for each leg the number of its class, -1 when it is the only one; and whether it is the last of it */
  readonly of: readonly number[];
  readonly closes: readonly boolean[];
}

/** Classes with several legs in the unit that ask for the same visible passes. */
export function sharedClasses(shape: Shape): SharedClasses | null {
  const key = shape.legClass.map((cls, leg) => cls * 256 + shape.asked[leg]);
  const seen = shape.from.map((node, leg) => shape.price[leg] > 1 && node !== shape.to[leg]);
  const numbers = new Map<number, number>();
  const of = key.map((name, leg) => {
    if (!seen[leg] || key.indexOf(name) === key.lastIndexOf(name)) return -1;
    if (!numbers.has(name)) numbers.set(name, numbers.size);
    return numbers.get(name)!;
  });
  if (numbers.size === 0) return null;
  return { count: numbers.size, of, closes: key.map((name, leg) => key.lastIndexOf(name) === leg) };
}
