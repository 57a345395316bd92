import { type ArmPair, armDirection, pairArms } from './arms.js';
import { arrangeAtNodes } from './faces.js';
import type { Network } from './network.js';

/** Edges that follow each other as one line; half-edges in walking order. */
export interface Chain {
  readonly halfEdges: readonly number[];
  readonly closed: boolean;
}

/** What meets at a node: half-edges that leave it by rising direction, and which of them make one line. */
export interface Meeting {
  readonly leaving: readonly number[];
  readonly directions: readonly number[];
  /** `arms` are places in `leaving` */
  readonly pairs: readonly ArmPair[];
  readonly onOutline: boolean;
}

/** Pairs the arms at every node. On the outline none runs on; where only two lines meet they are one. */
export function meetingsOf(network: Network, isOutline: readonly boolean[]): Meeting[] {
  return arrangeAtNodes(network).map((around) => {
    const armed = around.map((h) => ({
      h,
      direction: armDirection(network.edges[h >> 1].points, (h & 1) === 1),
    }));
    armed.sort((a, b) => a.direction - b.direction);
    const leaving = armed.map(({ h }) => h);
    const directions = armed.map(({ direction }) => direction);
    const onOutline = leaving.some((h) => isOutline[h >> 1]);
    let pairs: readonly ArmPair[] = [];
    if (!onOutline) pairs = leaving.length === 2 ? [{ arms: [0, 1], turn: 0 }] : pairArms(directions);
    return { leaving, directions, pairs, onOutline };
  });
}

/** Follows every line that is not outline from end to end, or round a ring. */
export function chainsOf(
  network: Network,
  meetings: readonly Meeting[],
  isOutline: readonly boolean[],
): Chain[] {
  const mate = new Int32Array(2 * network.edges.length).fill(-1);
  for (const { leaving, pairs } of meetings) {
    for (const { arms } of pairs) {
      const [a, b] = arms.map((i) => leaving[i]);
      mate[a] = b;
      mate[b] = a;
    }
  }
  const done = network.edges.map((_, e) => isOutline[e]);
  const walk = (start: number): Chain => {
    const halfEdges = [start];
    done[start >> 1] = true;
    let h = mate[start ^ 1];
    while (h >= 0 && !done[h >> 1]) {
      halfEdges.push(h);
      done[h >> 1] = true;
      h = mate[h ^ 1];
    }
    return { halfEdges, closed: h === start };
  };
  const chains: Chain[] = [];
  for (let h = 0; h < mate.length; h++) if (!done[h >> 1] && mate[h] < 0) chains.push(walk(h));
  for (let h = 0; h < mate.length; h++) if (!done[h >> 1]) chains.push(walk(h));
  return chains;
}
