import Flatbush from 'flatbush';
import type { Box } from '../geometry/box.js';
import { type Answers, either, type Memory, withLinked } from './memory.js';
import { isSame } from './same.js';

/** A box with room all round it, mm. */
export const grown = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

/**
 * For every line the others whose boxes meet its own, ascending. Cost: n log n in the lines; where few boxes have changed
 * since last time, an index over all and a search for each that has.
 *
 * @param name of the question, for the memory
 * @param box of what a line is known by
 */
export function nearLines<Known>(
  name: string,
  lines: Answers<Known>,
  box: (known: Known) => Box,
  memory: Memory,
): Answers<readonly number[]> {
  const count = lines.of.length;
  const boxes = memory.each(`${name}: box`, count, lines.changed, (l, last: Box | undefined): Box => {
    const found = box(lines.of[l]);
    return last && isSame(found, last) ? last : found;
  });
  const before = memory.last<readonly number[]>(name);
  const moved = new Set(boxes.changed);
  const index = moved.size > 0 ? indexOf(boxes.of) : null;
  const met = new Map<number, number[]>();
  const meets = (one: number, other: number) => {
    const known = met.get(one);
    if (known) known.push(other);
    else met.set(one, [other]);
  };
  for (const l of moved) {
    const { left, top, right, bottom } = boxes.of[l];
    index!.search(left, top, right, bottom, (other) => {
      if (other === l) return false;
      meets(l, other);
      if (!moved.has(other)) meets(other, l);
      return false;
    });
  }
  const stale = either(met.keys(), before ? withLinked(moved, before) : moved);
  return memory.each(name, count, stale, (l, last: readonly number[] | undefined) => {
    const stay = moved.has(l) ? [] : (last ?? []).filter((other) => !moved.has(other));
    const found = [...stay, ...(met.get(l) ?? [])].sort((a, b) => a - b);
    return last && isSame(found, last) ? last : found;
  });
}

function indexOf(boxes: readonly Box[]): Flatbush {
  const index = new Flatbush(boxes.length);
  for (const { left, top, right, bottom } of boxes) index.add(left, top, right, bottom);
  index.finish();
  return index;
}
