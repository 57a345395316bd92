/** Keys and indices from the top of a JSON value. */
export type JsonPath = readonly (string | number)[];

/**
 * Things that are said of places in a JSON value, in the order in which it has them. What is missing comes first in where
 * it is missing.
 */
export function inJsonOrder<T>(things: readonly T[], pathOf: (thing: T) => JsonPath, json: unknown): T[] {
  const ranks = ranksIn(json);
  return things
    .map((thing) => ({ thing, at: ranks(pathOf(thing)) }))
    .sort((a, b) => compare(a.at, b.at))
    .map(({ thing }) => thing);
}

/** Where each key of a path stands among its neighbors, as far as the value has them. */
function ranksIn(json: unknown): (path: JsonPath) => number[] {
  const known = new Map<object, Map<string, number>>();
  const keysOf = (at: object) => {
    const keys = known.get(at) ?? new Map(Object.keys(at).map((key, rank) => [key, rank]));
    known.set(at, keys);
    return keys;
  };
  return (path) => {
    const ranks: number[] = [];
    let at = json;
    for (const key of path) {
      const rank = typeof at === 'object' && at !== null ? keysOf(at).get(String(key)) : undefined;
      if (rank === undefined) break;
      ranks.push(rank);
      at = (at as Record<string | number, unknown>)[key];
    }
    return ranks;
  };
}

function compare(a: readonly number[], b: readonly number[]): number {
  const differs = a.findIndex((rank, i) => rank !== b[i]);
  return differs < 0 ? a.length - b.length : a[differs] - (b[differs] ?? -1);
}
