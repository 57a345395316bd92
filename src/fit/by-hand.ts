import { noise } from '../geometry/noise.js';
import type { Chain } from './fit.js';

/** How far a hand strays from even. Common practice. */
export interface Uneven {
  /** greatest change of where a repeat ends, as a share of its length */
  readonly lengths: number;
  /** how far a hole lies from its place at most, mm */
  readonly tips: number;
  /** how far a unit turns from its direction at most */
  readonly turn: number;
  readonly seed: number;
}

/** @param measure from 0, even, to 1, as uneven as a practiced hand; what one seed gives, it gives again */
export const unevenness = (measure: number, seed: number): Uneven | undefined =>
  measure > 0
    ? { lengths: 0.04 * measure, tips: 0.2 * measure, turn: (3 * Math.PI * measure) / 180, seed }
    : undefined;

/**
 * A chain as a hand would have worked it: every unit turned a little about its middle, every hole a little off its place.
 * Holes that legs share move together, and the legs' paths with their ends. Linear in the points.
 */
export function byHand(chain: Chain, { tips, turn, seed }: Uneven): Chain {
  const { nodes, from, to, unit } = chain;
  const count = nodes.length / 2;
  const moves = new Float64Array(nodes.length);
  const shares = new Uint16Array(count);
  for (let leg = 0; leg < from.length; ) {
    // legs stand unit by unit
    let end = leg;
    while (end < from.length && unit[end] === unit[leg]) end++;
    const own = new Set<number>();
    for (let i = leg; i < end; i++) own.add(from[i]).add(to[i]);
    let [x, y] = [0, 0];
    for (const node of own) {
      x += nodes[2 * node] / own.size;
      y += nodes[2 * node + 1] / own.size;
    }
    const angle = turn * noise(seed, unit[leg], 1);
    for (const node of own) {
      moves[2 * node] -= (nodes[2 * node + 1] - y) * angle;
      moves[2 * node + 1] += (nodes[2 * node] - x) * angle;
      shares[node]++;
    }
    leg = end;
  }
  for (let node = 0; node < count; node++) {
    // evenly over a disc: most holes are a little off, few far
    const radius = tips * Math.sqrt(Math.abs(noise(seed, node, 2)));
    const direction = Math.PI * noise(seed, node, 3);
    const share = Math.max(1, shares[node]);
    moves[2 * node] = moves[2 * node] / share + radius * Math.cos(direction);
    moves[2 * node + 1] = moves[2 * node + 1] / share + radius * Math.sin(direction);
  }
  return { ...chain, nodes: nodes.map((value, i) => value + moves[i]), path: movedPath(chain, moves) };
}

/** The legs' paths, moved at either end as their holes are, and in between by so much of each. */
function movedPath({ path, pathStart, from, to }: Chain, moves: Float64Array): Float64Array {
  const moved = path.slice();
  for (let leg = 0; leg < from.length; leg++) {
    const [a, b] = [pathStart[leg], pathStart[leg + 1] - 1];
    for (let k = a; k <= b; k++) {
      const t = b > a ? (k - a) / (b - a) : 0;
      for (const axis of [0, 1]) {
        moved[2 * k + axis] += (1 - t) * moves[2 * from[leg] + axis] + t * moves[2 * to[leg] + axis];
      }
    }
  }
  return moved;
}
