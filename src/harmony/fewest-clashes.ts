import { leastClashes } from './least-clashes.js';
import { clashes, clashIn, type Puzzle } from './puzzle.js';

/** A search longer than this many steps is broken off: the best so far is told as such. */
const MOST_STEPS = 300_000;

/** A choice, its clashes, and whether it is known that fewer cannot be. */
export interface Fewest {
  readonly chosen: Int32Array;
  readonly clashes: number;
  readonly proved: boolean;
}

/**
 * The fewest clashes there can be: branch and bound. A branch ends when its clashes, and those that each open thing has
 * at least with what is chosen already, are no fewer than the best known. Offers that nobody has yet and that differ in
 * name only are tried once. Exponential: for small blocks.
 * @param settled what must stay; -1 where all offers are open
 * @param known a choice to better
 */
export function fewestClashes(puzzle: Puzzle, settled: ArrayLike<number>, known: Int32Array): Fewest {
  const { neighbors, offers, marks } = puzzle;
  const alike = likeOffers(puzzle);
  const chosen = Int32Array.from({ length: neighbors.length }, (_, i) => settled[i]);
  const taken = new Int32Array(marks.length);
  for (const offer of chosen) if (offer >= 0) taken[offer]++;
  let best = known;
  let fewest = clashes(puzzle, known).length;
  let steps = 0;
  const least = leastClashes(puzzle);

  const against = (thing: number, offer: number) =>
    neighbors[thing].reduce(
      (sum, other) => sum + Number(chosen[other] >= 0 && clashIn(puzzle, offer, chosen[other])),
      0,
    );

  const search = (sofar: number): void => {
    if (fewest <= least || steps++ > MOST_STEPS) return;
    let bound = sofar;
    let next = -1;
    let nextCounts: number[] = [];
    let hardest = -1;
    for (let thing = 0; thing < chosen.length; thing++) {
      if (chosen[thing] >= 0) continue;
      const counts = offers[thing].map((offer) => against(thing, offer));
      bound += Math.min(...counts);
      const hard = counts.reduce((sum, count) => sum + Number(count > 0), 0) / counts.length;
      if (hard > hardest) [next, nextCounts, hardest] = [thing, counts, hard];
    }
    if (bound >= fewest) return;
    if (next < 0) {
      best = chosen.slice();
      fewest = sofar;
      return;
    }
    const fresh = new Set<number>();
    const order = nextCounts.map((_, i) => i).sort((a, b) => nextCounts[a] - nextCounts[b] || a - b);
    for (const i of order) {
      const offer = offers[next][i];
      if (taken[offer] === 0) {
        if (fresh.has(alike[offer])) continue;
        fresh.add(alike[offer]);
      }
      chosen[next] = offer;
      taken[offer]++;
      search(sofar + nextCounts[i]);
      taken[offer]--;
      chosen[next] = -1;
    }
  };
  search(clashes(puzzle, chosen).length);
  return { chosen: best, clashes: fewest, proved: fewest <= least || steps <= MOST_STEPS };
}

/** A number for each offer, equal for two that the same things may get and that clash with nothing but themselves. */
function likeOffers({ offers, marks }: Puzzle): Int32Array {
  const uses = new Map<number, number>();
  for (const list of marks) for (const mark of new Set(list)) uses.set(mark, (uses.get(mark) ?? 0) + 1);
  const takers = marks.map((): number[] => []);
  offers.forEach((list, thing) => {
    for (const offer of list) takers[offer].push(thing);
  });
  const kinds = new Map<string, number>();
  return Int32Array.from(marks, (list, offer) => {
    const alone = list.length > 0 && list.every((mark) => uses.get(mark) === 1);
    const key = alone ? takers[offer].join() : `only ${offer}`;
    if (!kinds.has(key)) kinds.set(key, kinds.size);
    return kinds.get(key)!;
  });
}
