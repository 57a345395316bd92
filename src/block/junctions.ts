import type { ArmPair } from './arms.js';
import type { Meeting } from './chains.js';
import type { Network } from './network.js';
import type { Arm, Junction } from './seam-map.js';
import type { OrderedChain } from './seam-order.js';
import { stations } from './seams.js';
import { isJunction } from './wishes.js';

/** Two seams turn alike at a crossing when they differ by no more than this, radians: a tenth of a degree. */
const ALIKE = (0.1 * Math.PI) / 180;

interface Owner {
  readonly seam: number | 'outline';
  readonly u: number;
  readonly sense: 1 | -1;
}

/**
 * The points where seams meet each other or the outline, sorted by (y, x). Where a seam runs through, it is the one sewn
 * last; in a drawing the straightest, of equally straight ones the longer, then the lower number; or the one the maker
 * names.
 *
 * @param input.sewn by line: the order of sewing, where it is known
 * @param input.through by node: the arm whose seam runs through by the maker's word
 * @returns also the junction of each node (-1 where there is none)
 */
export function junctionsOf(input: {
  readonly network: Network;
  readonly meetings: readonly Meeting[];
  readonly chains: readonly OrderedChain[];
  readonly outline: { readonly halfEdges: readonly number[]; readonly start: number } | null;
  readonly through: ReadonlyMap<number, number>;
  readonly sewn: readonly (number | undefined)[];
}): { readonly junctions: Junction[]; readonly numberAt: Int32Array } {
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
    .filter(({ meeting }) => isJunction(meeting))
    .sort((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0]);
  const numberAt = new Int32Array(network.nodes.length).fill(-1);
  const junctions = nodes.map(({ at, node, meeting }, i): Junction => {
    numberAt[node] = i;
    const arms = meeting.leaving.map((h, k): Arm => ({ ...owners[h], direction: meeting.directions[k] }));
    const wished = input.through.get(node);
    const through =
      wished === undefined
        ? straightest(sewnLast(meeting, network, input.sewn), arms, lengths)
        : (arms[wished].seam as number);
    return { at, arms, through, onOutline: meeting.onOutline };
  });
  return { junctions, numberAt };
}

/** The pairs of arms that were sewn last; all of them where that is not known. */
function sewnLast(
  { pairs, leaving }: Meeting,
  { edges }: Network,
  sewn: readonly (number | undefined)[],
): readonly ArmPair[] {
  const orders = pairs.map(({ arms }) =>
    Math.max(...arms.map((arm) => sewn[edges[leaving[arm] >> 1].line] ?? Number.NaN)),
  );
  const last = Math.max(...orders);
  return Number.isNaN(last) ? pairs : pairs.filter((_, i) => orders[i] === last);
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
