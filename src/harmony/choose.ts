import { type Fewest, fewestClashes } from './fewest-clashes.js';
import { leastClashes } from './least-clashes.js';
import { polished } from './polish.js';
import { clashes, type Ledger, type Puzzle } from './puzzle.js';
import { chooseInTurn } from './saturation.js';

/** So many open things are still searched through for the fewest clashes. */
const SMALL = 14;

/** Who gets what, and the pairs that meet and clash all the same. */
export interface Choice {
  readonly chosen: Int32Array;
  readonly clashes: readonly (readonly [number, number])[];
  /** that no choice has fewer */
  readonly proved: boolean;
}

/**
 * The choice with the fewest clashes, made to taste: in turn, then searched through where that leaves clashes and few
 * things are open, then polished.
 * @param settled what must stay; -1 where all offers are open
 */
export function choose(puzzle: Puzzle, settled: ArrayLike<number>, taste: () => Ledger): Choice {
  const fixed = (thing: number) => settled[thing] >= 0;
  const open = puzzle.neighbors.filter((_, thing) => !fixed(thing)).length;
  const inTurn = chooseInTurn(puzzle, settled, taste());
  const count = clashes(puzzle, inTurn).length;
  const found: Fewest =
    count > 0 && open <= SMALL
      ? fewestClashes(puzzle, settled, inTurn)
      : { chosen: inTurn, clashes: count, proved: false };
  const ledger = taste();
  found.chosen.forEach((offer, thing) => {
    ledger.count(thing, offer, 1);
  });
  const chosen = polished(puzzle, found.chosen, fixed, ledger);
  const left = clashes(puzzle, chosen);
  return {
    chosen,
    clashes: left,
    proved: found.proved || left.length === 0 || left.length <= leastClashes(puzzle),
  };
}
