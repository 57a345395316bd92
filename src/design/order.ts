import { fewestBroken } from './fewest-broken.js';

/** One treatment, and the seams whose treatments its ends tuck under. */
export interface Tucked {
  readonly treatment: number;
  readonly seam: number | 'outline';
  readonly tucksUnder: readonly (number | 'outline')[];
}

/** An end that cannot lie under the other seam's treatment, because that one is sewn first (or is its own). */
export interface BrokenTuck {
  readonly treatment: number;
  readonly seam: number | 'outline';
  readonly under: number | 'outline';
}

export interface SewingOrder {
  /** treatment indices as they are sewn */
  readonly order: readonly number[];
  /** in sewing order; empty where nothing goes round in a ring */
  readonly broken: readonly BrokenTuck[];
}

/**
 * The order in which treatments are sewn: each one before those that it tucks under, so that these lie over its ends.
 * Otherwise by seam number, the outline last. Where treatments lie under each other in a ring, as few tucks as possible
 * are broken. The order of the input does not matter.
 *
 * @param wanted treatments in the order that the maker wants: they take each other's places, and all others keep theirs
 */
export function sewingOrder(treatments: readonly Tucked[], wanted: readonly number[] = []): SewingOrder {
  const sorted = [...treatments].sort((a, b) => rank(a.seam) - rank(b.seam) || a.treatment - b.treatment);
  const onSeam = new Map<number | 'outline', number[]>();
  sorted.forEach(({ seam }, i) => {
    onSeam.set(seam, [...(onSeam.get(seam) ?? []), i]);
  });
  // earlier[i]: those sewn before i, because they tuck under it; ascending
  const earlier: number[][] = sorted.map(() => []);
  sorted.forEach(({ seam, tucksUnder }, i) => {
    for (const under of new Set(tucksUnder)) {
      if (under === seam) continue;
      for (const over of onSeam.get(under) ?? []) earlier[over].push(i);
    }
  });

  const free = ringsInOrder(earlier).flatMap((ring) => fewestBroken(ring, earlier));
  const asked = wanted.map((treatment) => sorted.findIndex((one) => one.treatment === treatment));
  const order = inWantedOrder(free, asked);
  const place = new Map(order.map((i, at) => [i, at]));
  const broken = order.flatMap((i) => {
    const { treatment, seam, tucksUnder } = sorted[i];
    return [...new Set(tucksUnder)]
      .filter(
        (under) => under === seam || onSeam.get(under)?.some((over) => place.get(over)! < place.get(i)!),
      )
      .sort((a, b) => rank(a) - rank(b))
      .map((under) => ({ treatment, seam, under }));
  });
  return { order: order.map((i) => sorted[i].treatment), broken };
}

/** The order in which `wanted` comes as asked, at the places that its members had. */
function inWantedOrder(order: readonly number[], wanted: readonly number[]): readonly number[] {
  const members = new Set(wanted);
  const next = wanted.values();
  return order.map((i) => (members.has(i) ? next.next().value! : i));
}

const rank = (seam: number | 'outline'): number => (seam === 'outline' ? Number.POSITIVE_INFINITY : seam);

/**
 * Tarjan's strongly connected components (SIAM Journal on Computing 1(2), 1972; from memory): groups that lie under each
 * other in rings, most of them single. A group comes out after all that have to be sewn before it. Members ascend.
 */
function ringsInOrder(earlier: readonly (readonly number[])[]): number[][] {
  const rings: number[][] = [];
  const found = new Int32Array(earlier.length).fill(-1);
  const low = new Int32Array(earlier.length);
  const open: number[] = [];
  const isOpen = new Uint8Array(earlier.length);
  let count = 0;
  const enter = (i: number) => {
    found[i] = low[i] = count++;
    open.push(i);
    isOpen[i] = 1;
    return { i, next: 0 };
  };
  for (let root = 0; root < earlier.length; root++) {
    if (found[root] >= 0) continue;
    const path = [enter(root)];
    while (path.length) {
      const top = path[path.length - 1];
      const { i } = top;
      if (top.next < earlier[i].length) {
        const before = earlier[i][top.next++];
        if (found[before] < 0) path.push(enter(before));
        else if (isOpen[before]) low[i] = Math.min(low[i], found[before]);
        continue;
      }
      path.pop();
      if (path.length) {
        const parent = path[path.length - 1].i;
        low[parent] = Math.min(low[parent], low[i]);
      }
      if (low[i] < found[i]) continue;
      const ring = open.splice(open.lastIndexOf(i));
      for (const member of ring) isOpen[member] = 0;
      rings.push(ring.sort((a, b) => a - b));
    }
  }
  return rings;
}
