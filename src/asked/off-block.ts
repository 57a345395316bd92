import type { SeamMap } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import { insideRings } from '../geometry/area.js';
import { areaIndex } from '../geometry/area-index.js';
import type { Points } from '../geometry/polyline.js';

/** What reaches past the outline by less is rounding, mm. */
const SLACK = 0.1;
/** Further away than this is told as this far, mm: no block is larger. */
const FAR = 10_000;

/**
 * What is to be said of a figure that does not lie on the block: beside it, or partly past its edge. The block is what its
 * outline and its patches hold, of however many parts, else the whole drawing.
 * @param hull convex and closed, all of the figure
 */
export function offBlock(name: string, hull: Points, map: SeamMap): Finding[] {
  const cloth = clothOf(map);
  const indices = cloth.map((rings) => areaIndex({ rings, rule: 'evenodd' }));
  let [nearest, furthest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < hull.length; i += 2) {
    const past = Math.min(...indices.map((away) => away(hull[i], hull[i + 1], FAR)));
    nearest = Math.min(nearest, past);
    furthest = Math.max(furthest, past);
  }
  if (furthest <= SLACK) return [];
  // a figure may lie all round what it lies on
  const isAround = cloth.some(([[x, y]]) => insideRings([x, y], [hull]));
  const isBeside = nearest > 0 && !isAround;
  const what = isBeside
    ? 'lies beside the block'
    : `reaches ${furthest.toFixed(1)} mm past the edge of the block`;
  return [
    {
      level: isBeside ? 'warning' : 'note',
      code: 'ornament-off-block',
      message: `${name} ${what}; give it another place, or a patch`,
      at: [hull[0], hull[1]],
    },
  ];
}

/** The parts of the cloth, as rings: each an outer one with its holes. */
function clothOf({ outline, patches, width, height }: SeamMap): Points[][] {
  if (outline || patches.length > 0) {
    return [
      ...(outline ? [[outline.points]] : []),
      ...patches.map(({ boundary, holes }) => [boundary, ...holes]),
    ];
  }
  return [[Float64Array.of(0, 0, width, 0, width, height, 0, height, 0, 0)]];
}
