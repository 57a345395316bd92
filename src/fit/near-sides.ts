import Flatbush from 'flatbush';
import { apart, type Side } from './beside-pair.js';

/** Which lines of a block may press which. */
export interface NearSides {
  readonly sides: readonly Side[];
  /** for every line the later ones that it may press, or be pressed by, ascending */
  readonly later: readonly (readonly number[])[];
}

/**
 * Lines whose treatments may press each other. Cost: n log n in the lines; where few have changed since `before`, n and a
 * search for each that has.
 */
export function nearSides(sides: readonly Side[], gap: number, before: NearSides | null): NearSides {
  const isKnown = before !== null && before.sides.length === sides.length;
  const changed = new Set<number>();
  sides.forEach((side, s) => {
    if (!isKnown || before.sides[s] !== side) changed.add(s);
  });
  if (isKnown && changed.size === 0) return before;
  const later: (readonly number[])[] = sides.map((_, s) =>
    !isKnown || changed.has(s) ? [] : withoutAny(before.later[s], changed),
  );
  const index = new Flatbush(sides.length);
  for (const { box } of sides) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  let most = 0;
  for (const { widest } of sides) most = Math.max(most, widest);
  const found = new Map<number, number[]>();
  for (const a of changed) {
    const { box, widest } = sides[a];
    const around = widest + most + gap;
    index.search(box.minX - around, box.minY - around, box.maxX + around, box.maxY + around, (b) => {
      // a pair of two that have changed is found from its earlier one
      if (b === a || (b < a && changed.has(b))) return false;
      if (apart(box, sides[b].box) > widest + sides[b].widest + gap) return false;
      const one = Math.min(a, b);
      const others = found.get(one) ?? [];
      others.push(Math.max(a, b));
      found.set(one, others);
      return false;
    });
  }
  for (const [one, others] of found) later[one] = [...later[one], ...others].sort((a, b) => a - b);
  return { sides, later };
}

const withoutAny = (all: readonly number[], some: ReadonlySet<number>): readonly number[] =>
  all.some((one) => some.has(one)) ? all.filter((one) => !some.has(one)) : all;
