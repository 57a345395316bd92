import { signedArea } from '../geometry/area.js';
import { groupsOf } from '../geometry/groups.js';
import { type Points, pointCount } from '../geometry/polyline.js';
import type { Edge, Network } from './network.js';

/**
 * Half-edge 2e runs along edge e, half-edge 2e + 1 against it. The face of a half-edge lies to its right hand as drawn,
 * so that faces run clockwise and the outer side of a connected part runs the other way.
 */
export interface Faces {
  /** each cycle of half-edges that bounds a face on one side */
  readonly cycles: readonly Cycle[];
  /** for each half-edge its cycle; -1 for edges that were left out */
  readonly cycleOf: Int32Array;
  /** how many connected parts there are (nodes without edges do not count) */
  readonly parts: number;
}

export interface Cycle {
  readonly halfEdges: readonly number[];
  /** mm2, positive round a face, zero or negative round the outside of a part */
  readonly area: number;
  readonly part: number;
}

/** Half-edges leaving each node, by rising direction angle (clockwise as drawn). */
export function arrangeAtNodes(network: Network, used?: readonly boolean[]): number[][] {
  const leaving: number[][] = network.nodes.map(() => []);
  network.edges.forEach((edge, e) => {
    if (used && !used[e]) return;
    leaving[edge.from].push(2 * e);
    leaving[edge.to].push(2 * e + 1);
  });
  const direction = (h: number) => departure(network.edges[h >> 1], h & 1);
  for (const list of leaving) {
    const keyed = list.map((h) => ({ h, angle: direction(h) }));
    keyed.sort((a, b) => a.angle - b.angle || a.h - b.h);
    keyed.forEach(({ h }, i) => {
      list[i] = h;
    });
  }
  return leaving;
}

/** Direction of the first chord of an edge, or of its last one walked back. */
function departure({ points }: Edge, back: number): number {
  const n = pointCount(points);
  const [i, j] = back ? [n - 1, n - 2] : [0, 1];
  return Math.atan2(points[2 * j + 1] - points[2 * i + 1], points[2 * j] - points[2 * i]);
}

/** Traces every cycle by the rightmost turn. With V nodes, E edges, C parts and F faces: V - E + F = 1 + C. */
export function traceFaces(network: Network, used?: readonly boolean[]): Faces {
  const { edges } = network;
  const leaving = arrangeAtNodes(network, used);
  const before = new Int32Array(2 * edges.length).fill(-1);
  for (const list of leaving) {
    list.forEach((h, i) => {
      before[h] = list[(i + list.length - 1) % list.length];
    });
  }
  const partOfNode = connectedParts(network, used);
  const cycleOf = new Int32Array(2 * edges.length).fill(-1);
  const cycles: Cycle[] = [];
  for (let start = 0; start < 2 * edges.length; start++) {
    if (cycleOf[start] >= 0 || before[start] < 0) continue;
    const halfEdges: number[] = [];
    for (let h = start; cycleOf[h] < 0; h = before[h ^ 1]) {
      cycleOf[h] = cycles.length;
      halfEdges.push(h);
    }
    const area = signedArea(cyclePoints(network, halfEdges));
    cycles.push({ halfEdges, area, part: partOfNode[edges[start >> 1].from] });
  }
  const parts = new Set(cycles.map(({ part }) => part)).size;
  return { cycles, cycleOf, parts };
}

function connectedParts({ nodes, edges }: Network, used?: readonly boolean[]): Int32Array {
  const groups = groupsOf(nodes.length);
  edges.forEach(({ from, to }, e) => {
    if (!used || used[e]) groups.join(from, to);
  });
  return Int32Array.from(nodes, (_, i) => groups.of(i));
}

/** The closed polyline along half-edges that follow each other; also used for chains, which then stay open. */
export function cyclePoints({ edges }: Network, halfEdges: readonly number[]): Points {
  let size = 2;
  for (const h of halfEdges) size += edges[h >> 1].points.length - 2;
  const points = new Float64Array(size);
  let come = 0;
  for (const h of halfEdges) {
    const part = edges[h >> 1].points;
    const last = part.length - 2;
    // each half-edge begins where the one before it ended
    for (let i = 0; i <= last; i += 2) {
      const from = h & 1 ? last - i : i;
      points[come + i] = part[from];
      points[come + i + 1] = part[from + 1];
    }
    come += last;
  }
  return points;
}
