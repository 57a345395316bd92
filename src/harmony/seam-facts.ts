import type { Patch, Seam, SeamMap } from '../block/seam-map.js';
import { polylineLength } from '../geometry/polyline.js';

/** What a seam is like, as far as it bears on what suits it. */
export interface SeamFacts {
  readonly id: number;
  /** mm */
  readonly length: number;
  /** the width that suits it, mm */
  readonly wanted: number;
  /** fabrics to both hands and for which share of its length they lie there; null where the drawing gives none */
  readonly fabrics: readonly {
    readonly share: number;
    readonly left: string | null;
    readonly right: string | null;
  }[];
}

/** No treatment is wanted narrower or wider than this, mm. Common practice. */
const NARROWEST = 3;
const WIDEST = 12;
/** A treatment takes no more than this share of the narrowest patch that it borders, so that cloth is left to be seen. */
const SHARE_OF_PATCH = 0.45;

export function seamFacts(map: SeamMap, seam: Seam): SeamFacts {
  const length = polylineLength(seam.points);
  const patches = seam.sides.flatMap(({ left, right }) => [left, right]).filter((id) => id !== null);
  const room = Math.min(...patches.map((id) => SHARE_OF_PATCH * breadth(map.patches[id - 1])));
  const fabric = (id: number | null) => (id === null ? null : map.patches[id - 1].fabric);
  return {
    id: seam.id,
    length,
    wanted: Math.max(NARROWEST, Math.min(wantedWidth(length), room, WIDEST)),
    fabrics: seam.sides.map(({ from, to, left, right }) => ({
      share: (to - from) / (length || 1),
      left: fabric(left),
      right: fabric(right),
    })),
  };
}

/** Four millimeters on a seam of two centimeters, nine on one of ten: as the root of the length. Common practice. */
export const wantedWidth = (length: number): number => 0.9 * Math.sqrt(length);

/** The width of a strip of the same area and girth, mm; of a square its side. */
function breadth({ area, boundary, holes }: Patch): number {
  const girth = polylineLength(boundary) + holes.reduce((sum, hole) => sum + polylineLength(hole), 0);
  const [half, square] = [girth / 4, Math.max(0, (girth / 4) ** 2 - area)];
  return half - Math.sqrt(square);
}
