type Place = readonly [number, number];

/** A round thing on the table: where its middle lies, and how far it reaches; one unit throughout. */
export interface Round {
  readonly at: Place;
  readonly reach: number;
}

/** What a handle or a mark on a seam takes, with some cloth around it, px. */
export const HANDLE = 17;

/** What is longer than wide is a row of round things, told by their ways from its middle. */
const ALONE: readonly Place[] = [[0, 0]];

/**
 * Which of some places, the best first, a thing is to lie at: the first where it touches nothing that is there; where there is
 * none, the one that is farthest from all.
 */
export function freest(
  places: readonly Place[],
  reach: number,
  there: readonly Round[],
  parts: readonly Place[] = ALONE,
): number {
  let best = 0;
  let most = -Infinity;
  for (let i = 0; i < places.length; i++) {
    const [x, y] = places[i];
    let clear = Infinity;
    for (const { at, reach: other } of there) {
      for (const [dx, dy] of parts) {
        clear = Math.min(clear, Math.hypot(x + dx - at[0], y + dy - at[1]) - reach - other);
      }
    }
    if (clear >= 0) return i;
    if (clear > most) [best, most] = [i, clear];
  }
  return best;
}

/** Which places were chosen, by the name of what lies there; they stay while something is held in the hand. */
export interface Chosen {
  isHeld: boolean;
  readonly nth: Map<string, number>;
}

/** Finds places for one thing after the other, each by a name of its own. */
export type Choose = <T extends { readonly at: Place }>(
  name: string,
  places: readonly T[],
  reach: number,
  parts?: readonly Place[],
) => T;

/** @param before is told what was chosen */
export function choosing(there: readonly Round[], before: Chosen): Choose {
  const chosen = new Map<string, readonly Round[]>();
  return (name, places, reach, parts = ALONE) => {
    chosen.delete(name);
    const held = before.isHeld ? before.nth.get(name) : undefined;
    const nth =
      held !== undefined && held < places.length
        ? held
        : freest(
            places.map(({ at }) => at),
            reach,
            [...there, ...[...chosen.values()].flat()],
            parts,
          );
    const { at } = places[nth];
    chosen.set(
      name,
      parts.map(([dx, dy]): Round => ({ at: [at[0] + dx, at[1] + dy], reach })),
    );
    before.nth.set(name, nth);
    return places[nth];
  };
}
