import type { SeamMap } from '../../src/block/seam-map.js';
import { seamOf } from '../../src/fit/seam-reference.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { footOn } from './drawn-lines.js';
import type { Missing } from './messages.js';

/** Treatments whose base line would miss its seam: none lies where theirs was. */
export const missingIn = (map: SeamMap, { treatments }: Dressing): Missing[] =>
  treatments.flatMap(({ seam, rows }, treatment): Missing[] => {
    if (seamOf(map, seam) !== null) return [];
    const { middle, id } = seam;
    const offs = middle ? map.seams.map(({ points }) => footOn(points, middle).distance) : [];
    const stitches = [...new Set(rows.map(({ stitch }) => stitch))];
    return [{ treatment, seam: id, stitches, at: middle, off: offs.length ? Math.min(...offs) : null }];
  });
