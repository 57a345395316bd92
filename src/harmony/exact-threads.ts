import { type Assignment, priceOf } from './assignment.js';

/**
 * Branch and bound (A. Land, A. Doig, 1960): things in the order they are sewn, threads from the cheapest; a branch is left
 * when even the cheapest threads for all that is open would make it no better than the best that is known.
 * @param known an assignment within the limits
 * @param most steps
 * @returns whether all that could be better were looked at
 */
export function exact(
  puzzle: Assignment,
  known: readonly number[],
  most: number,
): { chosen: readonly number[]; isDone: boolean } {
  const {
    own,
    pairs,
    clash,
    order,
    perThread,
    perChange,
    mostThreads = Infinity,
    mostChanges = Infinity,
  } = puzzle;
  const [things, threads] = [own.length, own[0].length];
  const turn = [...new Set([...order, ...own.keys()])];
  const rank = new Int32Array(things);
  turn.forEach((thing, i) => {
    rank[thing] = i;
  });
  // what a thing's price also depends on that has its thread by then
  const before = turn.map((thing) =>
    pairs.flatMap(({ a, b, weight }) => {
      const other = a === thing ? b : b === thing ? a : -1;
      return other >= 0 && rank[other] < rank[thing] ? [{ other, weight }] : [];
    }),
  );
  const sewnBefore = turn.map((thing) =>
    order.flatMap((one, i) => {
      const next = order[i + 1];
      if (next === undefined || one === next) return [];
      if (one === thing && rank[next] < rank[thing]) return [next];
      return next === thing && rank[one] < rank[thing] ? [one] : [];
    }),
  );
  const open = new Float64Array(things + 1);
  for (let i = things - 1; i >= 0; i--) open[i] = open[i + 1] + Math.min(...own[turn[i]]);
  const chosen = new Int32Array(things).fill(-1);
  const uses = new Int32Array(threads);
  let best = [...known];
  let bestPrice = priceOf(puzzle, known);
  let steps = 0;

  const search = (i: number, price: number, used: number, changes: number): void => {
    if (i === things) {
      if (price < bestPrice - 1e-9) {
        bestPrice = price;
        best = [...chosen];
      }
      return;
    }
    const thing = turn[i];
    const moves: { thread: number; price: number; used: number; changes: number }[] = [];
    for (let thread = 0; thread < threads; thread++) {
      let next = price + own[thing][thread];
      for (const { other, weight } of before[i]) next += weight * clash[thread][chosen[other]];
      let more = 0;
      for (const other of sewnBefore[i]) if (chosen[other] !== thread) more++;
      const added = uses[thread] === 0 ? 1 : 0;
      next += perThread * added + perChange * more;
      if (used + added > mostThreads || changes + more > mostChanges) continue;
      moves.push({ thread, price: next, used: used + added, changes: changes + more });
    }
    moves.sort((a, b) => a.price - b.price || a.thread - b.thread);
    for (const move of moves) {
      if (move.price + open[i + 1] >= bestPrice - 1e-9) return;
      if (++steps > most) return;
      chosen[thing] = move.thread;
      uses[move.thread]++;
      search(i + 1, move.price, move.used, move.changes);
      uses[move.thread]--;
      chosen[thing] = -1;
    }
  };
  search(0, 0, 0, 0);
  return { chosen: best, isDone: steps <= most };
}
