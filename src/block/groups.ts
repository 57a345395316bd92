/** Numbers 0 to n - 1 in groups that grow together; each group goes by its lowest number. */
export interface Groups {
  /** the lowest number of a number's group */
  readonly of: (i: number) => number;
  readonly join: (i: number, j: number) => void;
}

/** n numbers, each a group of its own. Joining costs next to nothing (paths are halved as they are walked). */
export function groupsOf(n: number): Groups {
  const parent = Int32Array.from({ length: n }, (_, i) => i);
  const of = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  const join = (i: number, j: number) => {
    const [a, b] = [of(i), of(j)];
    parent[Math.max(a, b)] = Math.min(a, b);
  };
  return { of, join };
}
