import type { Seam, SeamMap } from '../../src/block/seam-map.js';
import { referenceTo, seamOf } from '../../src/fit/seam-reference.js';
import type { Dressing, SeamReference } from '../../src/formats/dressing.js';
import { footOn } from './drawn-lines.js';
import type { Missing } from './messages.js';

/** Treatments whose base line would miss its seam: none lies where theirs was. */
export function missingIn(map: SeamMap, { treatments }: Dressing): Missing[] {
  const dressed = new Set(treatments.map(({ seam }) => numberOf(map, seam)));
  return treatments.flatMap(({ seam, rows }, treatment): Missing[] => {
    if (numberOf(map, seam) !== null) return [];
    const { middle, id } = seam;
    const nearest = middle && nearestTo(map, middle);
    const stitches = [...new Set(rows.map(({ stitch }) => stitch))];
    return [
      {
        treatment,
        seam: id,
        stitches,
        at: middle,
        nearest: nearest && {
          seam: referenceTo(nearest.seam),
          off: nearest.off,
          isBare: !dressed.has(nearest.seam.id),
        },
      },
    ];
  });
}

function numberOf(map: SeamMap, reference: SeamReference): number | 'outline' | null {
  const found = seamOf(map, reference);
  return found === null || found === 'outline' ? found : found.id;
}

/** The seam that comes nearest to a place, and how near, mm. */
function nearestTo(
  { seams }: SeamMap,
  at: readonly [number, number],
): { readonly seam: Seam; readonly off: number } | null {
  const offs = seams.map((seam) => ({ seam, off: footOn(seam.points, at).distance }));
  return offs.reduce<(typeof offs)[number] | null>((a, b) => (a && a.off <= b.off ? a : b), null);
}
