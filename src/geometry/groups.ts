import { int32s } from './flat.js';

/** Numbers 0 to n - 1 in groups that grow together; each group goes by its lowest number. */
export interface Groups {
  /** the lowest number of a number's group */
  readonly of: (i: number) => number;
  readonly join: (i: number, j: number) => void;
}

/** n numbers, each a group of its own. Joining costs next to nothing (paths are halved as they are walked). */
export function groupsOf(n: number): Groups {
  const parent = rising(n);
  const of = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  const join = (i: number, j: number) => {
    const a = of(i);
    const b = of(j);
    if (a < b) parent[b] = a;
    else parent[a] = b;
  };
  return { of, join };
}

/** The numbers 0 to n - 1. */
export function rising(n: number): Int32Array {
  const numbers = int32s(n);
  for (let i = 1; i < n; i++) numbers[i] = i;
  return numbers;
}
