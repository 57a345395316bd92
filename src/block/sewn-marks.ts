import { fromPoints, type Points } from '../geometry/polyline.js';
import { distanceTo, placesOn } from './line-nearness.js';
import { boxOf } from './sewn-loose-lines.js';
import { lay, type SewnPath } from './sewn-path.js';

/** Numerals and arrows are no larger than this, mm, and no more than this share of all. Common practice. */
const LARGEST_MARK = 20;
const LARGEST_SHARE = 0.3;
/** Lines nearer than this belong together, mm: a seam may end half a stitch short of the one it is meant for. */
const TOGETHER = 2;

/**
 * The paths of a stop without what stands alone and is small: piece numbers and arrows stitched into a placement map.
 * Nothing is left out where all is small. Cost: the square of the paths, whose boxes alone are looked at where they are apart.
 */
export function withoutMarks(paths: readonly SewnPath[]): SewnPath[] {
  const lines = paths.map((path) => fromPoints(lay(path).points));
  const groups = groupsOf(lines);
  const sizes = groups.map((group) => sizeOf(group.map((i) => lines[i])));
  const largest = Math.max(0, ...sizes);
  const isMark = (size: number) => size <= LARGEST_MARK && size <= LARGEST_SHARE * largest;
  const marks = new Set(groups.filter((_, g) => isMark(sizes[g])).flat());
  return paths.filter((_, i) => !marks.has(i));
}

/** Numbers of lines that touch or nearly do, group by group. */
function groupsOf(lines: readonly Points[]): number[][] {
  const looks = lines.map((line) => ({
    box: boxOfLine(line),
    places: placesOn([line]),
    away: distanceTo([line]),
  }));
  const group = lines.map((_, i) => i);
  const touch = (a: number, b: number): boolean => {
    const [l, t, r, o] = looks[a].box;
    const [m, u, s, p] = looks[b].box;
    if (l > s + TOGETHER || m > r + TOGETHER || t > p + TOGETHER || u > o + TOGETHER) return false;
    return looks[a].places.some((place) => looks[b].away(place, TOGETHER) < TOGETHER);
  };
  for (let i = 0; i < lines.length; i++) {
    for (let j = 0; j < i; j++) {
      const [from, to] = [group[i], group[j]];
      if (from === to || !touch(i, j)) continue;
      for (let k = 0; k <= i; k++) if (group[k] === from) group[k] = to;
    }
  }
  return [...new Set(group)].map((one) => group.flatMap((g, i) => (g === one ? [i] : [])));
}

const boxOfLine = (line: Points) =>
  boxOf(Array.from({ length: line.length / 2 }, (_, i) => [line[2 * i], line[2 * i + 1]] as const));

function sizeOf(lines: readonly Points[]): number {
  const boxes = lines.map(boxOfLine);
  return Math.max(
    Math.max(...boxes.map(([, , right]) => right)) - Math.min(...boxes.map(([left]) => left)),
    Math.max(...boxes.map(([, , , bottom]) => bottom)) - Math.min(...boxes.map(([, top]) => top)),
  );
}
