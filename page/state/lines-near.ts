import { nearestOnSegment } from '../../src/geometry/nearest.js';
import type { DrawnBlock, Line } from '../core/messages.js';

/** The line of the block nearest to a place, if it lies within reach; mm. */
export function lineNear(block: DrawnBlock, at: readonly [number, number], reach: number): Line | null {
  let near: Line | null = null;
  let least = reach;
  const look = (line: Line, points: Float64Array, handicap: number) => {
    for (let i = 0; i + 3 < points.length; i += 2) {
      const [ax, ay, bx, by] = points.subarray(i, i + 4);
      const { distance } = nearestOnSegment([at[0], at[1]], [ax, ay], [bx, by]);
      if (distance + handicap >= least) continue;
      least = distance + handicap;
      near = line;
    }
  };
  for (const { id, points } of block.seams) look(id, points, 0);
  // a seam that ends at the outline is what is meant there
  if (block.outline) look('outline', block.outline, reach / 4);
  return near;
}

/** The points of a line. */
export const pointsOf = (block: DrawnBlock, line: Line): Float64Array | null =>
  line === 'outline' ? block.outline : (block.seams.find(({ id }) => id === line)?.points ?? null);

/** All lines of the block, the outline last. */
export const linesOf = ({ seams, outline }: DrawnBlock): Line[] => [
  ...seams.map(({ id }) => id),
  ...(outline ? (['outline'] as const) : []),
];
