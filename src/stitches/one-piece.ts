import { groupsOf } from '../geometry/groups.js';
import type { Unit } from './stitch.js';

/** Units laid in a row to see whether they hang together: what the third adds, the second had added too. */
const ROW = 3;

/** Whether all legs of one thread in a row of such units hang together by shared holes and under-legs: no jump is needed. */
export function isOnePiece(unit: Unit, thread: number): boolean {
  const legs = unit.legs.filter((leg) => leg.thread === thread);
  const size = unit.nodes.length / 2;
  const { of: root, join: tie } = groupsOf(size * ROW);
  for (let k = 0; k < ROW; k++) {
    for (const { from, to } of legs) tie(k * size + from, k * size + to);
    if (k + 1 < ROW) for (const [here, next] of unit.joins) tie(k * size + here, (k + 1) * size + next);
  }
  const ends = Array.from({ length: ROW }, (_, k) => legs.map(({ from }) => root(k * size + from))).flat();
  return ends.every((end) => end === ends[0]);
}
