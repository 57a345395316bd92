import type { SeamMap } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import { insideRings } from '../geometry/area.js';
import { areaIndex } from '../geometry/area-index.js';
import { fromPoints, type Points } from '../geometry/polyline.js';

/** What reaches past the outline by less is rounding, mm. */
const SLACK = 0.1;
/** Further away than this is told as this far, mm: no block is larger. */
const FAR = 10_000;

/**
 * What is to be said of a figure that does not lie on the block: wholly beside it, on none of its patches, or partly past
 * its outline. The block is what its outline holds, else its patches, else the whole drawing.
 * @param hull convex, all of the figure
 */
export function offBlock(name: string, hull: Points, map: SeamMap): Finding[] {
  const at = [hull[0], hull[1]] as const;
  const said = (level: Finding['level'], what: string): Finding[] => [
    {
      level,
      code: 'ornament-off-block',
      message: `${name} ${what}; give it another place, or a patch`,
      at,
    },
  ];
  const { outline, patches, width, height } = map;
  if (outline || patches.length === 0) {
    const frame = [[0, 0] as const, [width, 0] as const, [width, height] as const, [0, height] as const];
    const ring = outline ? outline.points : fromPoints([...frame, frame[0]]);
    const [nearest, furthest] = reachPast(hull, [ring]);
    if (nearest > 0) return said('warning', 'lies beside the block');
    if (furthest > SLACK) return said('note', `reaches ${furthest.toFixed(1)} mm past the edge of the block`);
  }
  if (patches.length === 0) return [];
  const isOnPatch = patches.some(({ boundary, holes }) => reachPast(hull, [boundary, ...holes])[0] <= 0);
  return isOnPatch ? [] : said('warning', 'lies on none of the patches');
}

/** How far outside rings the points of a line lie, the least and the most, mm; negative inside. */
function reachPast(line: Points, rings: readonly Points[]): [number, number] {
  const away = areaIndex({ rings, rule: 'evenodd' });
  let [nearest, furthest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < line.length; i += 2) {
    const past = away(line[i], line[i + 1], FAR);
    nearest = Math.min(nearest, past);
    furthest = Math.max(furthest, past);
  }
  // a figure may lie all round what it lies on
  const isAround = nearest > 0 && rings.some(([x, y]) => insideRings([x, y], [line]));
  return [isAround ? 0 : nearest, furthest];
}
