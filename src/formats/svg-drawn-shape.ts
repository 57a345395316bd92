import { type Area, insideArea, insideRings } from '../geometry/area.js';
import { boxesMeet, boxOf } from '../geometry/box.js';
import { crossings } from '../geometry/crossings.js';
import { type Point, wrapAngle } from '../geometry/point.js';
import { cumulativeLength, type Points, pointCount } from '../geometry/polyline.js';
import { pointAtLength, segmentAt } from '../geometry/polyline-part.js';
import type { DrawnLine } from './line-drawing.js';
import { fillBorder } from './svg-fill-border.js';
import { flattenSubpath } from './svg-flatten.js';
import { fabricOf } from './svg-paint.js';
import type { Subpath } from './svg-shape.js';
import type { Look } from './svg-style.js';
import type { SvgElement } from './svg-tree.js';

/** Places along each line where a border is checked, and how far beside the line they lie, mm. */
const PLACES = 64;
const BESIDE = 0.01;

/**
 * The lines of one shape and the fabric they bound. Where lines of a filled shape lie in or over each other the fill
 * rule says what is cloth and what is a hole; without a stroke only the border of the fill is a line.
 *
 * @param subpaths in mm
 * @param byId for gradients
 */
export async function drawnShape(
  name: string,
  subpaths: readonly Subpath[],
  look: Look,
  byId: ReadonlyMap<string, SvgElement>,
  where: string,
): Promise<DrawnLine[]> {
  const stroked = look.stroke !== undefined && look.stroke !== 'none';
  // an open line that is painted only inside is the border of a patch
  const closes = look.fill !== undefined && look.fill !== 'none' && !stroked && name !== 'line';
  const drawn = subpaths.flatMap((subpath) => {
    const line = flattenSubpath(closes ? { ...subpath, closed: true } : subpath);
    return line ? [{ subpath, ...line }] : [];
  });
  const rings = drawn.filter(({ closed }) => closed);
  const fabric = rings.length ? await fabricOf(look, byId, where) : null;
  const outlines = rings.map(({ points }) => points);
  if (fabric === null || areApart(outlines)) {
    return drawn.map(({ points, closed }) => ({ points, closed, fill: closed ? fabric : null, where }));
  }
  const rule = look['fill-rule'] === 'evenodd' ? 'evenodd' : 'nonzero';
  const area: Area = { rings: outlines, rule };
  const asDrawn = drawn.map(({ points, closed }): DrawnLine => {
    return closed ? { points, closed, fill: fabric, area, where } : { points, closed, fill: null, where };
  });
  if (stroked) return asDrawn;
  const border = await borderOf(
    rings.map(({ subpath }) => subpath),
    area,
  );
  if (!border) return asDrawn;
  return [
    ...asDrawn.filter(({ closed }) => !closed),
    ...border.map((points) => ({ points, closed: true, fill: fabric, area, where })),
  ];
}

/** Null when it does not bound the area after all, or the area is nothing. */
async function borderOf(rings: readonly Subpath[], area: Area): Promise<Points[] | null> {
  const found = await fillBorder(rings, area.rule);
  const border = found.flatMap((ring) => flattenSubpath(ring)?.points ?? []);
  const places = [...area.rings, ...border].flatMap(placesBeside);
  const holds = places.every((p) => insideRings(p, border) === insideArea(p, area));
  return border.length && holds ? border : null;
}

/** Places close to a line on both its sides, all along it. */
function placesBeside(line: Points): Point[] {
  const at = cumulativeLength(line);
  const whole = at[at.length - 1];
  return Array.from({ length: PLACES }, (_, k): Point[] => {
    const u = ((k + 0.5) / PLACES) * whole;
    const i = segmentAt(at, u);
    const [x, y] = pointAtLength(line, at, u);
    const [dx, dy] = [line[2 * i + 2] - line[2 * i], line[2 * i + 3] - line[2 * i + 1]];
    const size = BESIDE / Math.sqrt(dx * dx + dy * dy);
    return [
      [x - dy * size, y + dx * size],
      [x + dy * size, y - dx * size],
    ];
  }).flat();
}

/** Whether rings lie side by side and none crosses itself: each then has the fill inside, by either rule. */
function areApart(rings: readonly Points[]): boolean {
  const boxes = rings.map((ring) => boxOf([ring]));
  return (
    boxes.every((a, i) => boxes.every((b, j) => j <= i || !boxesMeet(a, b))) && !rings.some(crossesItself)
  );
}

const crossesItself = (ring: Points): boolean => !isConvex(ring) && crossings([ring]).length > 0;

/** Turns one way all along, and once round. */
function isConvex(ring: Points): boolean {
  const n = pointCount(ring) - 1;
  let turned = 0;
  let last = Math.atan2(ring[2 * n + 1] - ring[2 * n - 1], ring[2 * n] - ring[2 * n - 2]);
  for (let i = 0; i < n; i++) {
    const heading = Math.atan2(ring[2 * i + 3] - ring[2 * i + 1], ring[2 * i + 2] - ring[2 * i]);
    const turn = wrapAngle(heading - last);
    if (turn * turned < 0) return false;
    turned += turn;
    last = heading;
  }
  return Math.abs(turned) < 2.5 * Math.PI;
}
