import type { Corner } from '../geometry/guide-line.js';
import { wrapAngle } from '../geometry/point.js';
import { cumulativeLength, type Points, polylineLength } from '../geometry/polyline.js';

/**
 * What is drawn along a seam to stitch on: a smooth wave, scallops (arcs that meet in cusps) or points (a zigzag). Both
 * lie as far to one hand of the seam as to the other.
 */
export type WaveShape = 'wave' | 'scallop' | 'points';

export interface Waves {
  readonly shape: WaveShape;
  /** from the lowest to the highest point, across the seam, mm */
  readonly height: number;
  /** wanted along the seam, mm */
  readonly length: number;
}

/** Whole waves, all of one length, from one place on a line to another; mm of the line. */
export interface WaveStretch {
  readonly from: number;
  readonly to: number;
  readonly waves: number;
  /** by how much the line turns at both ends, where those are corners: radians, positive to the left */
  readonly turns?: readonly [number, number];
}

/** A line of waves in the plane of the seam: x is u along it, y is -v, so that it is seen as drawings are. */
export interface WaveLine {
  readonly points: Points;
  /** sharp places inside, by arc length */
  readonly corners: readonly Corner[];
  /** tips and tops: arc length, and to which hand of the seam they point */
  readonly crests: readonly Crest[];
}

export interface Crest {
  readonly at: number;
  readonly hand: 1 | -1;
}

/** Chords of a curved wave: at least every 5 degrees of its phase, so that a wave of 6 by 20 mm strays 0.005 mm. */
const FEWEST_CHORDS = 72;
/** No chord turns more than this from the next: a line that does is taken for one drawn point by point, and faired. */
const CHORD_TURN = (2 * Math.PI) / 180;

/** Chords for a curve that would turn so far in all if it bent everywhere as at its tightest; a multiple of four. */
const chordsFor = (turn: number): number => 4 * Math.max(FEWEST_CHORDS / 4, Math.ceil(turn / CHORD_TURN / 4));

/** One wave from (0, v) to (1, v): its share of the length, and v as a share of the height. */
function sine(height: number, length: number): (readonly [number, number])[] {
  // y = h / 2 sin(2 pi x / l) bends by 2 pi2 h / l2 at its tops
  const chords = chordsFor((2 * Math.PI ** 2 * height) / length);
  return Array.from(
    { length: chords + 1 },
    (_, i) => [i / chords, Math.sin((2 * Math.PI * i) / chords) / 2] as const,
  );
}

const points = [
  [0, -0.5],
  [0.5, 0.5],
  [1, -0.5],
] as const;

/** Arcs of circles over their chords: the half angle an arc spans is 2 atan(2 height / length). */
function scallop(height: number, length: number): (readonly [number, number])[] {
  const half = 2 * Math.atan((2 * height) / length);
  const radius = length / (2 * Math.sin(half));
  const chords = chordsFor(2 * half);
  return Array.from({ length: chords + 1 }, (_, i) => {
    const angle = half * ((2 * i) / chords - 1);
    const rise = radius * (Math.cos(angle) - Math.cos(half));
    return [0.5 + (radius * Math.sin(angle)) / length, height > 0 ? rise / height - 0.5 : -0.5] as const;
  });
}

const oneWave = ({ shape, height }: Waves, length: number): readonly (readonly [number, number])[] =>
  shape === 'wave' ? sine(height, length) : shape === 'points' ? points : scallop(height, length);

/** Length along one wave that takes so much of the seam, mm. */
export function alongOneWave(waves: Waves, length: number): number {
  return polylineLength(
    Float64Array.from(oneWave(waves, length).flatMap(([u, v]) => [u * length, v * waves.height])),
  );
}

/** Sharp places in one wave. */
export const flanksOf = (shape: WaveShape): number => (shape === 'points' ? 2 : 1);

/** Corners that turn more would carry a low point far out over their tip. */
const POINTED_TURN = Math.PI / 2 + 1e-6;

/**
 * Whether scallops or points whose low points lie to that hand of the seam come up to its line at a corner and meet in the
 * corner itself: on the inside they would leave it bare.
 */
const meetsOnLine = (low: 1 | -1, turn: number): boolean =>
  turn * low > 1e-9 || Math.abs(turn) > POINTED_TURN;

/** A low flank drawn up to the line of the seam; v as a share of the height. */
const drawnUp = (v: number): number => (v + 0.5) / 2;

/**
 * Waves over stretches that follow each other; `hand` 1 rises to the left of the seam first, and -1 mirrors the line in
 * the seam. Low points that would lie inside a corner, or far out over its tip, come up to the corner itself.
 */
export function waveLine(waves: Waves, stretches: readonly WaveStretch[], hand: 1 | -1): WaveLine {
  const xy: number[] = [];
  const sharp: number[] = [];
  const tops: { point: number; hand: 1 | -1 }[] = [];
  for (const { from, to, waves: count, turns } of stretches) {
    const length = (to - from) / count;
    const shape = oneWave(waves, length);
    const [startsOnLine, endsOnLine] = [0, 1].map(
      (end) => waves.shape !== 'wave' && meetsOnLine(-hand as 1 | -1, turns?.[end] ?? 0),
    );
    for (let k = 0; k < count; k++) {
      const begins = xy.length / 2;
      // the last point of a wave is the first of the next
      shape.forEach(([u, v], i) => {
        if (i === 0 && begins > 0) return;
        const isUp = (startsOnLine && k === 0 && u < 0.5) || (endsOnLine && k === count - 1 && u > 0.5);
        xy.push(from + (k + u) * length, -hand * (isUp ? drawnUp(v) : v) * waves.height);
      });
      const first = begins > 0 ? begins - 1 : 0;
      const last = first + shape.length - 1;
      const middle = (first + last) / 2;
      if (waves.shape === 'wave') {
        const quarter = (last - first) / 4;
        tops.push({ point: first + quarter, hand }, { point: last - quarter, hand: -hand as 1 | -1 });
      } else {
        tops.push({ point: middle, hand });
        if (waves.shape === 'points') sharp.push(middle);
        sharp.push(last);
      }
    }
  }
  const line = Float64Array.from(xy);
  const at = cumulativeLength(line);
  const end = line.length / 2 - 1;
  const corners = sharp
    .filter((i) => i > 0 && i < end)
    .map((i): Corner => ({ u: at[i], turn: turnAt(line, i) }));
  return {
    points: line,
    corners,
    crests: tops.map((top) => ({ at: at[top.point], hand: top.hand })),
  };
}

/** Turn at an inner vertex, positive to the left as seen. */
function turnAt(line: Points, i: number): number {
  const direction = (k: number) =>
    Math.atan2(line[2 * k + 3] - line[2 * k + 1], line[2 * k + 2] - line[2 * k]);
  return -wrapAngle(direction(i) - direction(i - 1));
}
