import type { StitchFile } from '../../formats/stitch-file.js';
import type { Point } from '../../geometry/point.js';
import { distanceTo, placesOn } from '../line-nearness.js';
import { SEAM_ALLOWANCE } from '../sewn-lines.js';
import type { Recognized, Role, StopRole } from './role.js';
import { linesOfStops, type StopLines } from './stop-lines.js';

/** Lines within this of each other are the same line, sewn again, mm. */
const SAME = 1;
/** So much of a line lies on another, or keeps its distance, when it is said to. */
const MOST = 0.6;
/** Seams are sewn twice: out and back, with ties, and never quite twice over their whole length. */
const TWICE = 1.6;
/** A tack-down lies inside the edges of its patch by up to this, mm. */
const TACKED = 5;
/** A seam allowance may be a little more or less than 1/4 inch, mm, and keeps its distance this well. */
const ALLOWANCE_SLACK = 1.2;
const EVEN = 0.4;
/** Of a decoration less goes on without a corner as long as seams do. */
const FLOWS = 0.5;
/** A mark stands alone: so far from all else, mm, and no larger than this nor than this share of the block. Common practice. */
const APART = 2;
const LARGEST_MARK = 20;
const LARGEST_SHARE = 0.3;
/** A map holds at least so many lines. */
const LEAST_LINES = 3;
/** The outline, and the edge over it, reach at least so far across the block. */
const ACROSS = 0.9;

/** A stop, its lines, and how to ask of them. */
interface Look extends StopLines {
  readonly places: readonly Point[];
  readonly away: (place: Point, within: number) => number;
}

/**
 * What each color stop of a stitch file is for, from what it sews and what lies beside it. Cost: n log n in the stitches of
 * plain lines, and for each pair of stops the length of the one.
 *
 * @param said by the maker, who overrules what is seen; stops from 1
 */
export function recognizeStops(file: StitchFile, said: ReadonlyMap<number, Role> = new Map()): Recognized {
  const looks = linesOfStops(file).map(
    (stop): Look => ({ ...stop, places: placesOn(stop.lines), away: distanceTo(stop.lines) }),
  );
  const isSaid = ({ stop }: Look) => said.has(stop);
  const isDecoration = (one: Look) => one.kind === 'line' && one.flowing < FLOWS && !isSaid(one);
  const lines = looks.filter((one) => one.kind === 'line' && one.lines.length > 0 && !isDecoration(one));
  const edges = looks.filter(({ kind }) => kind === 'edge');
  const outer = boxOf(lines.concat(edges));
  const isMark = (one: Look) => !isSaid(one) && standsAlone(one, lines.concat(edges), outer);
  const drawn = lines.filter((one) => !isMark(one));
  const doubles = drawn.filter(({ passes }) => passes >= TWICE);
  const map = drawn.find((one) => said.get(one.stop) === 'map') ?? mapAmong(drawn, doubles, said);
  const isAcross = (one: Look) => {
    const { width, height } = boxOf([one]);
    return width >= ACROSS * outer.width && height >= ACROSS * outer.height;
  };
  const finishing = edges.filter(isAcross);

  const roleOf = (one: Look): Omit<StopRole, 'stop'> => {
    const own = said.get(one.stop);
    if (own !== undefined) return { role: own, evidence: 'you said so' };
    if (one.kind === 'nothing') return { role: 'other', evidence: 'nothing is sewn in it' };
    if (one.kind === 'edge') {
      return {
        role: 'edge',
        evidence: `zigzag ${one.width.toFixed(1)} mm wide${isAcross(one) ? ' round the block' : ''}`,
      };
    }
    if (one.kind === 'fill') return { role: 'fill', evidence: 'thread covers an area' };
    if (one.kind === 'figure' || one.lines.length === 0)
      return { role: 'other', evidence: 'small figures, no lines' };
    if (isDecoration(one)) return { role: 'other', evidence: 'short strokes, no long lines: a decoration' };
    if (!drawn.includes(one)) return { role: 'other', evidence: 'small and by itself: a mark' };
    if (one === map)
      return { role: 'map', evidence: `${one.lines.length} lines at once, where others are sewn later` };
    if (doubles.includes(one)) return { role: 'seam', evidence: `sewn ${one.passes.toFixed(1)} times over` };
    return single(one);
  };

  /** A line sewn once. */
  const single = (one: Look): Omit<StopRole, 'stop'> => {
    const edge = edges.find((other) => shareOn(one, other) >= MOST);
    if (edge) return { role: 'placement', evidence: `the edge in stop ${edge.stop} lies over it` };
    const again = doubles.find((other) => other.stop > one.stop && shareOn(one, other) >= MOST);
    if (again) return { role: 'placement', evidence: `the seam in stop ${again.stop} lies over it` };
    const others = drawn.filter((other) => other !== one && other !== map);
    const beside = others.find((other) => keepsAllowance(one, other));
    if (beside) return { role: 'allowance', evidence: `keeps ${SEAM_ALLOWANCE} mm from stop ${beside.stop}` };
    if (isAcross(one)) return { role: 'placement', evidence: 'goes round the whole block' };
    if (doubles.length === 0 && !map) return { role: 'seam', evidence: 'a line sewn once, as all are here' };
    if (isTack(one, drawn)) return { role: 'tack-down', evidence: 'lies just inside other lines' };
    return { role: 'other', evidence: 'a line that no other one explains' };
  };

  const roles = looks.map((one): StopRole => ({ stop: one.stop, ...roleOf(one) }));
  return {
    roles,
    seams: seamStops(roles, looks, finishing, isSaid),
    after: lastOfPiecing(roles, looks, finishing),
  };
}

/** The stop that holds the lines of all others at once. */
function mapAmong(
  lines: readonly Look[],
  doubles: readonly Look[],
  said: ReadonlyMap<number, Role>,
): Look | null {
  const candidates = lines.filter(
    (one) => !said.has(one.stop) && one.passes < TWICE && one.lines.length >= LEAST_LINES,
  );
  const later = (one: Look) => (doubles.length > 0 ? doubles : lines).filter((other) => other !== one);
  const isMap = (one: Look) => {
    const all = later(one);
    const places = all.flatMap((other) => other.places);
    if (places.length === 0) return true;
    return places.filter((place) => one.away(place, SAME) <= SAME).length >= MOST * places.length;
  };
  return (
    candidates.filter(isMap).sort((a, b) => b.places.length - a.places.length || a.stop - b.stop)[0] ?? null
  );
}

/** Whether a stop sews something small away from all other lines, such as a piece number. */
function standsAlone(
  one: Look,
  all: readonly Look[],
  { width, height }: { width: number; height: number },
): boolean {
  const own = boxOf([one]);
  const size = Math.max(own.width, own.height);
  if (size > LARGEST_MARK || size > LARGEST_SHARE * Math.max(width, height)) return false;
  const others = all.filter((other) => other !== one);
  return one.places.every((place) => others.every((other) => other.away(place, APART) > APART));
}

/** How much of a line's length lies on another. */
function shareOn(one: Look, other: Look): number {
  if (one.places.length === 0) return 0;
  return one.places.filter((place) => other.away(place, SAME) <= SAME).length / one.places.length;
}

/** Whether a line runs beside another at the distance of a seam allowance. */
function keepsAllowance(one: Look, other: Look): boolean {
  const most = SEAM_ALLOWANCE + ALLOWANCE_SLACK;
  const distances = one.places.map((place) => other.away(place, most)).filter((mm) => mm !== Infinity);
  if (distances.length < MOST * one.places.length) return false;
  const usual = [...distances].sort((a, b) => a - b)[distances.length >> 1];
  if (Math.abs(usual - SEAM_ALLOWANCE) > ALLOWANCE_SLACK) return false;
  return distances.filter((mm) => Math.abs(mm - usual) <= EVEN).length >= MOST * one.places.length;
}

/** Whether most of a line lies beside others, near them and not on them. */
function isTack(one: Look, lines: readonly Look[]): boolean {
  const others = lines.filter((other) => other !== one);
  const near = one.places.filter((place) =>
    others.some((other) => {
      const mm = other.away(place, TACKED);
      return mm > SAME / 2 && mm <= TACKED;
    }),
  );
  return near.length >= MOST * one.places.length;
}

function boxOf(looks: readonly Look[]): { width: number; height: number } {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { places } of looks) {
    for (const [x, y] of places) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  return { width: Math.max(0, right - left), height: Math.max(0, bottom - top) };
}

/** The map alone where there is one; else all seams, and placement lines that no seam lies on. */
function seamStops(
  roles: readonly StopRole[],
  looks: readonly Look[],
  finishing: readonly Look[],
  isSaid: (one: Look) => boolean,
): number[] {
  const maps = roles.filter(({ role }) => role === 'map').map(({ stop }) => stop);
  if (maps.length > 0) return maps;
  const seams = looks.filter((_, i) => roles[i].role === 'seam');
  const placed = looks.filter((one, i) => {
    if (roles[i].role !== 'placement') return false;
    return isSaid(one) || !seams.some((seam) => shareOn(one, seam) >= MOST);
  });
  // one outline is enough: that of a trimming line and that of a placement line are the same
  const outlines = placed.filter((one) => finishing.some((edge) => shareOn(one, edge) >= MOST));
  const left = placed.filter((one) => !outlines.slice(1).includes(one));
  return [...seams, ...left].map(({ stop }) => stop).sort((a, b) => a - b);
}

/** The last stop that pieces the block: seams, their tack-downs, patches laid on with their edges. */
function lastOfPiecing(
  roles: readonly StopRole[],
  looks: readonly Look[],
  finishing: readonly Look[],
): number {
  const piecing: readonly Role[] = ['map', 'seam', 'tack-down', 'placement', 'edge'];
  const isFinishing = (one: Look) =>
    finishing.includes(one) || finishing.some((edge) => shareOn(one, edge) >= MOST && one.lines.length <= 2);
  const last = looks.filter((one, i) => piecing.includes(roles[i].role) && !isFinishing(one)).at(-1);
  return last?.stop ?? roles.length;
}
