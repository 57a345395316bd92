import type { SewnStitches } from '../../check/density/sewn-stitches.js';
import { sharedHoles } from '../../check/density/shared-holes.js';
import { element, title } from '../svg.js';
import { pathData } from '../svg-pen.js';
import type { Overlay } from './overlay.js';

/** Across, mm: small enough that holes 0.3 mm apart are told apart. */
const DOT = 0.22;
const INK = '#1c1512';
/** Of the ring round a hole that is pierced too often, mm. */
const RING = 0.55;
const ringLook = { fill: 'none', stroke: '#d55e00', 'stroke-width': 0.22 };

/** Every needle hole where it is, and a ring round those that the needle goes through more often than `limit` times. */
export function holesOverlay(stitches: SewnStitches, limit: number): Overlay {
  const often = sharedHoles(stitches, limit);
  const rings = often.map(({ at: [cx, cy], value }) =>
    element('circle', { cx, cy, r: RING }, title(`pierced ${value} times`)),
  );
  const count = stitches.ends.length / 4;
  return {
    picture: holeDots(stitches) + (rings.length ? element('g', ringLook, ...rings) : ''),
    part: {
      heading: `Needle holes: ${count} piercings`,
      entries: [
        {
          sample: (cx, cy) => element('circle', { cx, cy, r: DOT / 2, fill: INK }),
          told: 'the needle goes in here',
        },
        {
          sample: (cx, cy) => element('circle', { ...ringLook, cx, cy, r: RING }),
          told: `more than ${limit} times through one hole: ${often.length || 'none'}`,
        },
      ],
    },
  };
}

/** Every piercing as a dot: one move of one path for each, those that fall together too. */
function holeDots({ ends }: SewnStitches): string {
  if (ends.length === 0) return '';
  const d = pathData((pen) => {
    for (let i = 2; i < ends.length; i += 4) {
      pen.move(ends[i], ends[i + 1]);
      pen.line(ends[i], ends[i + 1]);
    }
  });
  const look = { stroke: INK, 'stroke-width': DOT, 'stroke-linecap': 'round', fill: 'none' };
  return element('g', look, title('needle holes'), element('path', { d }));
}
