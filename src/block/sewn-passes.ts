import type { StitchFile } from '../formats/stitch-file.js';
import { type FileStop, stopsOf } from '../formats/stops.js';
import { distance, type Point, wrapAngle } from '../geometry/point.js';
import { toPoints } from '../geometry/polyline.js';
import { InputError } from '../input-error.js';

/** Needle points sewn one way along a line, without turning back. */
export interface Pass {
  readonly points: readonly Point[];
  /** its longest stitch, mm */
  readonly stitch: number;
  readonly stop: number;
  /** rises from pass to pass in the order in which the file sews them */
  readonly order: number;
}

/** Runs shorter than this that go there and back are ties: three stitches of 0.4 mm. */
export const TIE = 1.2;
/** Seam lines of the largest hoop, sewn twice, come to a few thousand stitches. */
export const MOST_STITCHES = 50_000;
/** Rounding to whole steps puts two piercings of one hole at most this far apart. */
const SAME_HOLE = 0.15;
/** A stitch that turns back more than this begins another pass; no seam has so sharp a corner. */
const REVERSAL = (135 * Math.PI) / 180;
/** Among stitches as short as ties a turn sharper than this is a tie's. */
const TIE_TURN = (60 * Math.PI) / 180;
/** A zigzag turns this much at most of its needle points, which do not return to the hole before. */
const ZIGZAG_TURN = (60 * Math.PI) / 180;

/**
 * The passes of chosen color stops, in mm from the file's start, y down. Ties and doubled stitches are gone.
 * @throws InputError for a stop that does not exist, holds no stitches, holds ties only, or is a zigzag or satin
 */
export function sewnPasses(file: StitchFile, stops: readonly number[], where: string): Pass[] {
  const all = stopsOf(file);
  if (stops.length === 0) {
    throw new InputError('no-stops', where, 'no color stop was named', `name stops from ${extent(all)}`);
  }
  const named = [...new Set(stops)].map((n) => {
    const stop = Number.isInteger(n) ? all[n - 1] : undefined;
    if (!stop) throw new InputError('no-such-stop', where, `there is no stop ${n}`, `it has ${extent(all)}`);
    return stop;
  });
  const stitches = named.reduce((sum, stop) => sum + stop.stitches, 0);
  if (stitches > MOST_STITCHES) {
    throw new InputError(
      'not-a-seam',
      named.length === 1 ? `${where} stop ${named[0].stop}` : where,
      `${named.length === 1 ? 'it holds' : 'the stops named hold'} ${stitches} stitches, more than any seam lines do`,
      'name stops sewn in plain stitches along the seams',
    );
  }
  return named.flatMap((stop) => passesOfStop(stop, `${where} stop ${stop.stop}`));
}

const extent = (all: readonly FileStop[]): string =>
  all.length === 1 ? 'one stop, number 1' : `${all.length} stops, 1 to ${all.length}`;

function passesOfStop(stop: FileStop, where: string): Pass[] {
  if (stop.stitches === 0) {
    throw new InputError('empty-stop', where, 'it holds no stitches', 'name stops that sew seams');
  }
  const runs = stop.runs.map((run) => withoutStrayStart(withoutRepeats(toPoints(run))));
  if (runs.some(isZigzag)) {
    throw new InputError(
      'not-a-seam',
      where,
      'it is sewn as a zigzag or satin, which is no seam line',
      'name stops sewn in plain stitches along the seams',
    );
  }
  const passes = runs
    .flatMap((run) => cutAtReversals(withoutDoubledStitches(run)))
    .map(withoutStubs)
    .filter((points) => points.length > 1 && lengthOf(points) >= TIE);
  if (passes.length === 0) {
    throw new InputError('not-a-seam', where, 'it holds nothing but ties', 'name stops that sew seams');
  }
  return passes.map((points, i) => ({
    points,
    stitch: longestStitch(points),
    stop: stop.stop,
    order: stop.stop * MOST_STITCHES + i,
  }));
}

function withoutRepeats(run: readonly Point[]): Point[] {
  return run.filter((p, i) => i === 0 || distance(p, run[i - 1]) > 0);
}

/**
 * The jumps before a run may end off the line, the first stitch then reaching it. Where the needle never pierces the
 * place, and the stitch from it is overlong or turns off at once, the place is no part of the line.
 */
function withoutStrayStart(run: readonly Point[]): readonly Point[] {
  if (run.length < 4) return run;
  const usual = longestStitch(run.slice(1));
  const pierced = run.some((p, i) => i > 0 && distance(p, run[0]) <= SAME_HOLE);
  const stray = distance(run[0], run[1]) > 1.5 * usual || turnAt(run, 1) > TIE_TURN;
  return !pierced && stray ? run.slice(1) : run;
}

/** Takes out a stitch that is sewn back and again through the same two holes: ties, and lines of threefold stitches. */
function withoutDoubledStitches(run: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const p of run) {
    kept.push(p);
    const [a, b, c, d] = kept.slice(-4);
    if (d && distance(a, c) <= SAME_HOLE && distance(b, d) <= SAME_HOLE) kept.length -= 2;
  }
  return kept;
}

function cutAtReversals(run: readonly Point[]): Point[][] {
  const passes: Point[][] = [[run[0]]];
  for (let i = 1; i < run.length; i++) {
    passes[passes.length - 1].push(run[i]);
    if (i < run.length - 1 && turnsBack(run, i)) passes.push([run[i]]);
  }
  return passes;
}

function turnsBack(run: readonly Point[], i: number): boolean {
  const turn = turnAt(run, i);
  const short = distance(run[i - 1], run[i]) < TIE && distance(run[i], run[i + 1]) < TIE;
  return turn > REVERSAL || (short && turn > TIE_TURN);
}

/** What is left of a tie sewn across the line: a short stitch at the pass's end that turns off sharply. */
function withoutStubs(pass: readonly Point[]): readonly Point[] {
  let [first, last] = [0, pass.length - 1];
  while (
    last - first > 1 &&
    distance(pass[first], pass[first + 1]) < TIE &&
    turnAt(pass, first + 1) > TIE_TURN
  ) {
    first++;
  }
  while (
    last - first > 1 &&
    distance(pass[last - 1], pass[last]) < TIE &&
    turnAt(pass, last - 1) > TIE_TURN
  ) {
    last--;
  }
  return pass.slice(first, last + 1);
}

function isZigzag(run: readonly Point[]): boolean {
  let turns = 0;
  for (let i = 1; i + 1 < run.length; i++) {
    if (turnAt(run, i) > ZIGZAG_TURN && distance(run[i - 1], run[i + 1]) > SAME_HOLE) turns++;
  }
  return turns >= 8 && turns > 0.5 * (run.length - 2);
}

function longestStitch(points: readonly Point[]): number {
  let longest = 0;
  for (let i = 1; i < points.length; i++) longest = Math.max(longest, distance(points[i - 1], points[i]));
  return longest;
}

function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) sum += distance(points[i - 1], points[i]);
  return sum;
}

function turnAt(run: readonly Point[], i: number): number {
  const before = Math.atan2(run[i][1] - run[i - 1][1], run[i][0] - run[i - 1][0]);
  const after = Math.atan2(run[i + 1][1] - run[i][1], run[i + 1][0] - run[i][0]);
  return Math.abs(wrapAngle(after - before));
}
