import type { Puzzle } from './puzzle.js';

/**
 * A number of clashes that every choice has at least. Meetings are parted into groups of which all meet; a group of m
 * that may have k marks between them shares each mark between m / k of them on average, and evenly is best (pigeonhole).
 */
export function leastClashes({ neighbors, offers, marks }: Puzzle): number {
  const near = neighbors.map((list) => new Set(list));
  const told = neighbors.map(() => new Set<number>());
  let least = 0;
  neighbors.forEach((list, a) => {
    for (const b of list) {
      if (b < a || told[a].has(b)) continue;
      const group = [a, b];
      for (const c of list) {
        if (group.every((one) => one !== c && near[c].has(one) && !told[c].has(one))) group.push(c);
      }
      for (const one of group) for (const other of group) if (one !== other) told[one].add(other);
      const kinds = new Set(group.flatMap((one) => offers[one].flatMap((offer) => marks[offer])));
      least += sharedEvenly(group.length, kinds.size);
    }
  });
  return least;
}

/** Pairs of m things that share one of k marks when they are shared out evenly. */
function sharedEvenly(m: number, k: number): number {
  if (k >= m || k === 0) return 0;
  const each = Math.floor(m / k);
  const more = m - each * k;
  const pairs = (count: number) => (count * (count - 1)) / 2;
  return more * pairs(each + 1) + (k - more) * pairs(each);
}
