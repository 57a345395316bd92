import type { ArmPair } from './arms.js';
import type { Meeting } from './chains.js';
import type { Network } from './network.js';
import type { Arm, Junction } from './seam-map.js';
import type { OrderedChain } from './seam-order.js';
import { stations } from './seams.js';

/** Two seams turn alike at a crossing when they differ by no more than this, radians: a tenth of a degree. */
const ALIKE = (0.1 * Math.PI) / 180;

export interface ThroughWish {
  readonly at: readonly [number, number];
  readonly seam: number;
}

interface Owner {
  readonly seam: number | 'outline';
  readonly u: number;
  readonly sense: 1 | -1;
}

/**
 * The points where seams meet each other or the outline, sorted by (y, x). Where a seam runs through, it is the
 * straightest one; of equally straight ones the longer, then the lower number; or the one the maker names.
 *
 * @returns also the junction of each node (-1 where there is none), and the wishes that no junction could grant
 */
export function junctionsOf(input: {
  readonly network: Network;
  readonly meetings: readonly Meeting[];
  readonly chains: readonly OrderedChain[];
  readonly outline: { readonly halfEdges: readonly number[]; readonly start: number } | null;
  readonly through: readonly ThroughWish[];
}): { readonly junctions: Junction[]; readonly numberAt: Int32Array; readonly lost: ThroughWish[] } {
  const { network, meetings, chains, outline } = input;
  const owners: Owner[] = [];
  const lengths = new Map<number | 'outline', number>();
  const own = (seam: number | 'outline', line: Parameters<typeof stations>[1]) => {
    const { u, length } = stations(network, line);
    lengths.set(seam, length);
    line.halfEdges.forEach((h, i) => {
      const next = (i + 1) % line.halfEdges.length;
      owners[h] = { seam, u: u[i], sense: 1 };
      owners[h ^ 1] = { seam, u: next === 0 && !line.closed ? length : u[next], sense: -1 };
    });
  };
  for (const [i, chain] of chains.entries()) own(i + 1, chain);
  if (outline) own('outline', { ...outline, closed: true });

  const nodes = network.nodes
    .map((at, node) => ({ at, node, meeting: meetings[node] }))
    .filter(
      ({ meeting: { leaving, onOutline } }) => leaving.length > 2 || (onOutline && leaving.length !== 2),
    )
    .sort((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0]);
  const numberAt = new Int32Array(network.nodes.length).fill(-1);
  const junctions = nodes.map(({ at, node, meeting }, i): Junction => {
    numberAt[node] = i;
    const arms = meeting.leaving.map((h, k): Arm => ({ ...owners[h], direction: meeting.directions[k] }));
    const through = straightest(meeting.pairs, arms, lengths);
    return { at, arms, through, onOutline: meeting.onOutline };
  });
  const lost = input.through.filter((wish) => {
    const i = nearest(junctions, wish.at);
    if (i < 0) return true;
    const passes = meetings[nodes[i].node].pairs.some(
      ({ arms: [a] }) => junctions[i].arms[a].seam === wish.seam,
    );
    if (passes) junctions[i] = { ...junctions[i], through: wish.seam };
    return !passes;
  });
  return { junctions, numberAt, lost };
}

function straightest(
  pairs: readonly ArmPair[],
  arms: readonly Arm[],
  lengths: ReadonlyMap<number | 'outline', number>,
): number | null {
  const through = pairs.map(({ arms: [a], turn }) => {
    const seam = arms[a].seam as number;
    return { seam, turn, length: lengths.get(seam) ?? 0 };
  });
  const least = Math.min(...through.map(({ turn }) => turn));
  const alike = through.filter(({ turn }) => turn - least <= ALIKE);
  // lengths are compared to a micrometer, so that equal ones go by number
  alike.sort((a, b) => Math.round((b.length - a.length) * 1000) || a.seam - b.seam);
  return alike.length ? alike[0].seam : null;
}

function nearest(junctions: readonly Junction[], [x, y]: readonly [number, number]): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  junctions.forEach(({ at }, i) => {
    const far = Math.hypot(at[0] - x, at[1] - y);
    if (far < least) [best, least] = [i, far];
  });
  return best;
}
