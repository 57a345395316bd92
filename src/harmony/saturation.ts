import { Heap } from './heap.js';
import { bestOffer, type Ledger, type Puzzle } from './puzzle.js';

/**
 * A good choice for all, one after the other: always for the thing whose neighbors have the most different marks, of
 * these for the one with the most neighbors, of these for the first. It gets the offer with the fewest clashes, of these
 * the one that costs least there. Without clashes when there are more single marks than neighbors; with two marks also
 * on every puzzle that two marks can solve (DSATUR: Brelaz, "New methods to color the vertices of a graph", CACM 22,
 * 1979). n log n in the things.
 * @param first what is settled beforehand; -1 where nothing is
 * @param ledger nothing counted yet; afterwards it has counted all
 */
export function chooseInTurn(puzzle: Puzzle, first: ArrayLike<number>, ledger: Ledger): Int32Array {
  const { neighbors, marks } = puzzle;
  const things = neighbors.length;
  const chosen = Int32Array.from({ length: things }, (_, i) => first[i]);
  const seen = neighbors.map(() => new Set<number>());
  const byDegree = neighbors
    .map((_, i) => i)
    .sort((a, b) => neighbors[b].length - neighbors[a].length || a - b);
  const rank = new Int32Array(things);
  byDegree.forEach((thing, i) => {
    rank[thing] = things - 1 - i;
  });
  const queue = new Heap();
  // one number orders by marks seen, then by rank, and tells which thing it is
  const enter = (thing: number) => queue.push(seen[thing].size * things + rank[thing]);
  const settle = (thing: number) => {
    ledger.count(thing, chosen[thing], 1);
    for (const other of neighbors[thing]) {
      const before = seen[other].size;
      for (const mark of marks[chosen[thing]]) seen[other].add(mark);
      if (seen[other].size > before && chosen[other] < 0) enter(other);
    }
  };
  for (let i = 0; i < things; i++) if (chosen[i] < 0) enter(i);
  for (let i = 0; i < things; i++) if (chosen[i] >= 0) settle(i);
  for (let key = queue.pop(); key !== undefined; key = queue.pop()) {
    const thing = byDegree[things - 1 - (key % things)];
    if (chosen[thing] >= 0) continue;
    chosen[thing] = bestOffer(puzzle, ledger, thing, chosen);
    settle(thing);
  }
  return chosen;
}
