import { bestOffer, type Ledger, type Puzzle } from './puzzle.js';

/** Rounds after which a choice is left as it is: more have hardly ever changed anything. */
const MOST_ROUNDS = 12;

/**
 * A choice made better, one thing after the other, until nothing changes: each gets the offer with the fewest clashes, of
 * these the one that costs least beside all others. Clashes never grow in number.
 * @param fixed which things keep what they have
 * @param ledger has counted the start
 */
export function polished(
  puzzle: Puzzle,
  start: Int32Array,
  fixed: (thing: number) => boolean,
  ledger: Ledger,
): Int32Array {
  const chosen = start.slice();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let changed = false;
    for (let thing = 0; thing < chosen.length; thing++) {
      if (fixed(thing)) continue;
      const had = chosen[thing];
      ledger.count(thing, had, -1);
      chosen[thing] = -1;
      chosen[thing] = bestOffer(puzzle, ledger, thing, chosen);
      ledger.count(thing, chosen[thing], 1);
      changed ||= chosen[thing] !== had;
    }
    if (!changed) break;
  }
  return chosen;
}
