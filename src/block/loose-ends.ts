import { type Finding, lineName } from '../finding.js';
import { nearestOnSegment } from '../geometry/nearest.js';
import type { Point } from '../geometry/point.js';
import { pointAt, pointCount, polylineLength } from '../geometry/polyline.js';
import { indexSegments } from '../geometry/segment-index.js';
import type { Seam, SeamMap } from './seam-map.js';

/** An end that comes this near to another line was meant to reach it, mm. Common practice. */
const MEANT = 1;
/** What goes on this little past a line was meant to end on it, mm. Common practice. */
export const OVERSHOOT = 3;

/**
 * Ends that just miss a line, ends that go a little past one, and stubs that hang on a junction. Near n log n in the
 * number of segments.
 */
export function looseEnds(map: SeamMap): Finding[] {
  const loose = map.seams.flatMap((seam) => {
    const last = pointCount(seam.points) - 1;
    return (seam.ends ?? []).flatMap(({ kind }, side) =>
      kind === 'free' ? [{ seam, side, at: pointAt(seam.points, side * last) }] : [],
    );
  });
  if (loose.length === 0) return [];
  const nearestLine = otherLines(map);
  return loose.flatMap(({ seam, side, at }): Finding[] => {
    const length = polylineLength(seam.points);
    const past = seam.crossings
      .map(({ u, junction }) => ({ by: side === 0 ? u : length - u, junction }))
      .filter(({ by }) => by <= OVERSHOOT)
      .sort((a, b) => b.by - a.by)[0];
    if (past) return [overshoot(map, seam.id, past, at)];
    if (length <= OVERSHOOT && seam.ends?.some(({ kind }) => kind !== 'free')) {
      // one beyond the outline is told of as that
      return map.outline && liesOutside(seam) ? [] : [stub(seam.id, length, at)];
    }
    const near = nearestLine(seam.id, at);
    return near ? [nearMiss(seam.id, near, at)] : [];
  });
}

function overshoot(
  { junctions }: SeamMap,
  seam: number,
  { by, junction }: { by: number; junction: number },
  at: Point,
): Finding {
  const { arms } = junctions[junction];
  const other = arms.find((arm) => arm.seam !== seam)?.seam;
  return {
    level: 'warning',
    code: 'overshoot',
    message:
      `seam ${seam} goes ${by.toFixed(1)} mm past ${other === undefined ? 'a junction' : lineName(other)}; ` +
      'if it was meant to end there, end it there in the drawing',
    seam,
    at,
  };
}

function stub(seam: number, length: number, at: Point): Finding {
  return {
    level: 'warning',
    code: 'stub',
    message:
      `seam ${seam} is a stub of ${length.toFixed(1)} mm that ends free; if a line was drawn past its junction, ` +
      'end it there in the drawing',
    seam,
    at,
  };
}

/** Whether a seam has no patch on either hand. */
export const liesOutside = ({ sides }: Seam): boolean =>
  sides.every(({ left, right }) => left === null && right === null);

function nearMiss(
  seam: number,
  { line, gap }: { line: number | 'outline'; gap: number },
  at: Point,
): Finding {
  // a tenth more than the gap, so that rounding cannot fall short
  const snap = Math.ceil(gap * 10 + 0.5) / 10;
  return {
    level: 'warning',
    code: 'near-miss',
    message: `seam ${seam} ends ${gap.toFixed(2)} mm short of ${lineName(line)}; --snap ${snap} joins them`,
    seam,
    at,
  };
}

/** Finds the nearest line but the seam itself within reach of a point. */
function otherLines(
  map: SeamMap,
): (seam: number, at: Point) => { line: number | 'outline'; gap: number } | null {
  const lines = [...map.seams.map(({ points }) => points), ...(map.outline ? [map.outline.points] : [])];
  const index = indexSegments(lines);
  return (seam, [x, y]) => {
    let best: { line: number | 'outline'; gap: number } | null = null;
    for (const k of index.near(x - MEANT, y - MEANT, x + MEANT, y + MEANT)) {
      const l = index.line[k];
      if (l === seam - 1) continue;
      const [a, b] = [pointAt(lines[l], index.from[k]), pointAt(lines[l], index.from[k] + 1)];
      const gap = nearestOnSegment([x, y], a, b).distance;
      if (gap <= MEANT && gap < (best?.gap ?? Infinity)) {
        best = { line: l < map.seams.length ? l + 1 : 'outline', gap };
      }
    }
    return best;
  };
}
