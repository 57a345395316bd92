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

/**
 * References as they lie on a block that was made larger or smaller since: moved with it when that finds more of their
 * seams, else as they are. The change of size is told by the ends of the seams with the same numbers.
 */
export function resized(map: SeamMap, references: readonly SeamReference[]): readonly SeamReference[] {
  const found = (list: readonly SeamReference[]) => list.filter((one) => seamOf(map, one) !== null).length;
  if (found(references) === references.length) return references;
  const numbered = references.filter((one) => one.ends && one.id !== 'outline' && map.seams[one.id - 1]);
  if (numbered.length === 0) return references;
  const was = boxOf(numbered.flatMap((one) => one.ends!));
  const is = boxOf(numbered.flatMap((one) => endsOf(map.seams[(one.id as number) - 1])));
  if (!(was.width > 0 && was.height > 0)) return references;
  const move = ([x, y]: Point): Point => [
    is.x + ((x - was.x) * is.width) / was.width,
    is.y + ((y - was.y) * is.height) / was.height,
  ];
  const moved = references.map((one) => ({
    ...one,
    middle: one.middle && move(one.middle),
    ends: one.ends && ([move(one.ends[0]), move(one.ends[1])] as const),
  }));
  return found(moved) > found(references) ? moved : references;
}

function boxOf(points: readonly Point[]): { x: number; y: number; width: number; height: number } {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
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
