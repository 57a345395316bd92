import type { DrawnLine, LineDrawing } from '../../../src/block/drawn-line.js';
import { fromPoints } from '../../../src/geometry/polyline.js';
import { seeded } from '../../bench/many-seams.js';

export type XY = readonly [number, number];

/** A polygon of one patch, and where a straight line cuts it in two. */
interface CutFace {
  readonly halves: readonly [XY[], XY[]];
  readonly cut: readonly [XY, XY];
}

/** No side of a patch and no patch is cut so that less than this is left, mm: no seam could be told from its junctions. */
const LEAST_SIDE = 8;
/** Nor is a corner made sharper than this, radians: no piecer sews such a sliver. */
const SHARPEST = Math.PI / 9;

/**
 * A rectangle of 100 to 200 mm cut into 5 to 12 convex patches by straight lines. A cut ends on the lines it meets (T), or
 * goes on through the patch beyond (X). Seeded.
 */
export function convexBlock(seed: number): LineDrawing {
  const random = seeded(7919 * seed);
  for (let k = 0; k < 10; k++) random();
  const [width, height] = [100 + 100 * random(), 100 + 100 * random()];
  const patches = 5 + Math.floor(8 * random());
  const frame: XY[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  let faces: XY[][] = [frame];
  const cuts: XY[][] = [];
  for (let tries = 0; faces.length < patches && tries < 200; tries++) {
    const largest = faces.reduce((a, b) => (area(b) > area(a) ? b : a));
    const middle = largest.reduce(
      ([x, y], [px, py]): XY => [x + px / largest.length, y + py / largest.length],
      [0, 0] as XY,
    );
    const at: XY = [middle[0] + 12 * (random() - 0.5), middle[1] + 12 * (random() - 0.5)];
    const heading = Math.PI * random();
    const first = cutFace(largest, at, heading);
    if (!first) continue;
    const made = new Map([[largest, first]]);
    if (random() < 0.35 && faces.length + 1 < patches) {
      const [next, beyond] = faceBeyond(faces, largest, first, heading);
      if (next && beyond) made.set(next, beyond);
    }
    faces = faces.flatMap((face) => made.get(face)?.halves ?? [face]);
    const ends = [...made.values()].flatMap(({ cut }) => cut);
    const along = ([x, y]: XY) => x * Math.cos(heading) + y * Math.sin(heading);
    ends.sort((a, b) => along(a) - along(b));
    cuts.push([ends[0], ends[ends.length - 1]]);
  }
  return drawingOf(width, height, [[...frame, frame[0]], ...cuts]);
}

/** A drawing of plain lines; the first is closed. */
export function drawingOf(width: number, height: number, lines: readonly (readonly XY[])[]): LineDrawing {
  return {
    width,
    height,
    origin: [0, 0],
    lines: lines.map(
      (points, i): DrawnLine => ({
        points: fromPoints(points),
        closed: i === 0,
        fill: null,
        where: `line ${i + 1}`,
      }),
    ),
  };
}

/** The patch that a cut through `face` would enter when drawn on, and how it cuts that one. */
function faceBeyond(
  faces: readonly XY[][],
  face: XY[],
  { cut }: CutFace,
  heading: number,
): [XY[], CutFace] | [null, null] {
  for (const other of faces) {
    if (other === face) continue;
    const beyond = cutFace(other, cut[0], heading);
    const meets = beyond?.cut.some((p) => cut.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1e-6));
    if (beyond && meets) return [other, beyond];
  }
  return [null, null];
}

function cutFace(face: readonly XY[], [cx, cy]: XY, heading: number): CutFace | null {
  const [dx, dy] = [Math.cos(heading), Math.sin(heading)];
  const side = ([x, y]: XY) => (y - cy) * dx - (x - cx) * dy;
  const halves: [XY[], XY[]] = [[], []];
  const cut: XY[] = [];
  for (let i = 0; i < face.length; i++) {
    const [a, b] = [face[i], face[(i + 1) % face.length]];
    const [sa, sb] = [side(a), side(b)];
    halves[sa >= 0 ? 0 : 1].push(a);
    if (sa >= 0 === sb >= 0) continue;
    const t = sa / (sa - sb);
    const p: XY = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    const slant = Math.abs(Math.sin(Math.atan2(b[1] - a[1], b[0] - a[0]) - heading));
    if (Math.asin(slant) < SHARPEST) return null;
    for (const corner of [a, b]) {
      if (Math.hypot(p[0] - corner[0], p[1] - corner[1]) < LEAST_SIDE) return null;
    }
    cut.push(p);
    halves[0].push(p);
    halves[1].push(p);
  }
  if (cut.length !== 2 || Math.hypot(cut[0][0] - cut[1][0], cut[0][1] - cut[1][1]) < 2 * LEAST_SIDE)
    return null;
  return { halves, cut: [cut[0], cut[1]] };
}

const area = (face: readonly XY[]): number =>
  Math.abs(
    face.reduce((sum, [x, y], i) => {
      const [px, py] = face[(i + face.length - 1) % face.length];
      return sum + (px * y - x * py) / 2;
    }, 0),
  );
