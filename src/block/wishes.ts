import { distance, wrapAngle } from '../geometry/point.js';
import type { Meeting } from './chains.js';
import type { Network } from './network.js';
import type { OrderedChain } from './seam-order.js';

/** The maker's word at the junction nearest to a place; seams have the numbers that the block gives them by itself. */
export interface JunctionWishes {
  /** this seam runs through */
  readonly through?: readonly WishOfOne[];
  /** these two seams are one line */
  readonly join?: readonly {
    readonly at: readonly [number, number];
    readonly seams: readonly [number, number];
  }[];
  /** this seam ends there instead of running on */
  readonly split?: readonly WishOfOne[];
}

export interface WishOfOne {
  readonly at: readonly [number, number];
  readonly seam: number;
}

/** A wish that no junction can grant. */
export interface LostWish {
  readonly kind: 'through' | 'join' | 'split';
  readonly at: readonly [number, number];
  readonly seams: readonly number[];
}

export interface Wished {
  readonly meetings: readonly Meeting[];
  /** by node: the arm, as a place in `leaving`, whose seam runs through by the maker's word */
  readonly through: ReadonlyMap<number, number>;
  readonly lost: readonly LostWish[];
}

/** Whether seams meet here, or one ends on the outline: a junction of the map. */
export const isJunction = ({ leaving, onOutline }: Meeting): boolean =>
  leaving.length > 2 || (onOutline && leaving.length !== 2);

/**
 * Which arms make one line, as the maker wishes: first what is split, then what is joined, then who runs through.
 * @param found the seams as the block gives them by itself, which the wishes number
 */
export function asWished(
  network: Network,
  plain: readonly Meeting[],
  found: readonly OrderedChain[],
  { through = [], join = [], split = [] }: JunctionWishes,
): Wished {
  const meetings = [...plain];
  const lost: LostWish[] = [];
  const granted = new Map<number, number>();
  const seamOf = new Int32Array(2 * network.edges.length);
  found.forEach(({ halfEdges }, i) => {
    for (const h of halfEdges) seamOf[h] = seamOf[h ^ 1] = i + 1;
  });
  const nearest = ([x, y]: readonly [number, number]): number => {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    network.nodes.forEach((at, node) => {
      const far = distance(at, [x, y]);
      if (far < least && isJunction(plain[node])) [best, least] = [node, far];
    });
    return best;
  };
  const armsOf = (node: number, seam: number): number[] =>
    node < 0 ? [] : meetings[node].leaving.flatMap((h, arm) => (seamOf[h] === seam ? [arm] : []));
  /** where among a junction's pairs one of these arms is */
  const pairWith = (node: number, arms: readonly number[]): number =>
    node < 0 ? -1 : meetings[node].pairs.findIndex((pair) => pair.arms.some((arm) => arms.includes(arm)));

  for (const { at, seam } of split) {
    const node = nearest(at);
    const cut = pairWith(node, armsOf(node, seam));
    if (cut < 0) lost.push({ kind: 'split', at, seams: [seam] });
    else meetings[node] = { ...meetings[node], pairs: meetings[node].pairs.filter((_, i) => i !== cut) };
  }
  for (const { at, seams } of join) {
    const node = nearest(at);
    const pair =
      node < 0 || meetings[node].onOutline
        ? null
        : straightestOf(meetings[node], armsOf(node, seams[0]), armsOf(node, seams[1]));
    if (!pair) {
      lost.push({ kind: 'join', at, seams });
      continue;
    }
    const others = meetings[node].pairs.filter(({ arms }) => !arms.some((arm) => pair.arms.includes(arm)));
    meetings[node] = { ...meetings[node], pairs: [...others, pair] };
  }
  for (const { at, seam } of through) {
    const node = nearest(at);
    const pair = pairWith(node, armsOf(node, seam));
    if (pair < 0) lost.push({ kind: 'through', at, seams: [seam] });
    else granted.set(node, meetings[node].pairs[pair].arms[0]);
  }
  return { meetings, through: granted, lost };
}

/** Of the arms of two seams the two that make the straightest line; null where one has none or both are the same. */
function straightestOf(
  { directions }: Meeting,
  ones: readonly number[],
  others: readonly number[],
): Meeting['pairs'][number] | null {
  const pairs = ones.flatMap((a) =>
    others
      .filter((b) => b !== a)
      .map((b) => ({
        arms: [a, b] as const,
        turn: Math.abs(wrapAngle(directions[a] - directions[b] - Math.PI)),
      })),
  );
  return pairs.reduce<Meeting['pairs'][number] | null>(
    (best, pair) => (best && best.turn <= pair.turn ? best : pair),
    null,
  );
}
