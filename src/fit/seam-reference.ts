import type { Seam, SeamMap } from '../block/seam-map.js';
import type { SeamReference } from '../formats/dressing.js';
import { distance, type Point } from '../geometry/point.js';
import { cumulativeLength, firstPoint, lastPoint, type Points } from '../geometry/polyline.js';

/** A redrawn seam is known again when its middle and ends lie within this of where they were, mm, in the mean. */
const SAME_SEAM = 6;

/** How a treatment remembers a seam: by number, and by middle and ends. */
export function referenceTo(seam: Seam): SeamReference {
  const [start, end] = endsOf(seam);
  return { id: seam.id, middle: rounded(middleOf(seam.points)), ends: [rounded(start), rounded(end)] };
}

/**
 * The seam a reference means in this map: the one with its number if that lies where it was, else the nearest one that
 * does; null when there is none.
 */
export function seamOf(map: SeamMap, reference: SeamReference): Seam | 'outline' | null {
  if (reference.id === 'outline') return map.outline ? 'outline' : null;
  const byNumber = map.seams[reference.id - 1] ?? null;
  if (!reference.middle || !reference.ends) return byNumber;
  const miss = (seam: Seam) => missOf(seam, reference.middle!, reference.ends!);
  if (byNumber && miss(byNumber) <= SAME_SEAM / 2) return byNumber;
  const nearest = map.seams.reduce<Seam | null>((a, b) => (a === null || miss(b) < miss(a) ? b : a), null);
  return nearest && miss(nearest) <= SAME_SEAM ? nearest : null;
}

type Ends = readonly [Point, Point];

function missOf(seam: Seam, middle: Point, [a, b]: Ends): number {
  const [start, end] = endsOf(seam);
  const along = distance(start, a) + distance(end, b);
  const against = distance(start, b) + distance(end, a);
  return (distance(middleOf(seam.points), middle) + Math.min(along, against)) / 3;
}

const endsOf = (seam: Seam): Ends => [firstPoint(seam.points), lastPoint(seam.points)];

function middleOf(points: Points): Point {
  const at = cumulativeLength(points);
  const half = at[at.length - 1] / 2;
  let i = 1;
  while (i < at.length - 1 && at[i] < half) i++;
  const t = (half - at[i - 1]) / (at[i] - at[i - 1] || 1);
  return [
    points[2 * i - 2] + t * (points[2 * i] - points[2 * i - 2]),
    points[2 * i - 1] + t * (points[2 * i + 1] - points[2 * i - 1]),
  ];
}

const rounded = ([x, y]: Point): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];
