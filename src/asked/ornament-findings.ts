import type { Patch } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import { extentOf } from '../fit/figure-extent.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { ORNAMENT_CLEAR, type Standing } from './free-place.js';
import type { AskedOrnament } from './ornaments.js';

/** Placed by hand, and too close to what is kept clear. */
export const inKeptArea = ({ name, placed }: AskedOrnament, { name: kept }: KeptArea): Finding => ({
  level: 'warning',
  code: 'ornament-kept-out',
  message: `${name} is left out: it would reach into ${kept}, which is kept clear; give it another place, or a patch`,
  at: placed.at,
});

/** @param across of the largest clear circle, mm */
export function noRoom({ name, figure, passes }: AskedOrnament, patch: Patch, across: number): Finding {
  const least = 2 * extentOf(figure.build(figure.least), passes).circle.radius;
  const room = across > 0 ? `a circle of ${across.toFixed(1)} mm` : 'no room';
  return {
    level: 'warning',
    code: 'ornament-no-room',
    message:
      `${name} is left out: patch ${patch.id} has ${room} clear by ${ORNAMENT_CLEAR} mm all round, and its smallest good ` +
      `size needs ${least.toFixed(1)} mm; a larger patch, or narrower treatments round this one, would do`,
    at: [patch.boundary[0], patch.boundary[1]],
  };
}

export function madeSmaller({ name }: AskedOrnament, patch: Patch, { scale, spot }: Standing): Finding {
  return {
    level: 'note',
    code: 'ornament-smaller',
    message: `${name} is made ${Math.round(scale * 100)} % of its size to fit into patch ${patch.id}`,
    at: [spot.x, spot.y],
  };
}
