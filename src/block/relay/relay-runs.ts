import type { StitchFile } from '../../formats/stitch-file.js';
import { stopsOf } from '../../formats/stops.js';
import { turnedVector } from '../../geometry/placement.js';
import type { Point } from '../../geometry/point.js';
import { type Points, toPoints } from '../../geometry/polyline.js';
import { InputError, InputErrors } from '../../input-error.js';
import { coveredArea, partsOfRun, type SewnPart } from '../stop-kinds.js';
import { type BaseLine, baseLine, baseOf, lineBeside, nearestOn } from './beside-line.js';
import type { RelayRun } from './relaid-file.js';
import { middleLine, relayEdge } from './relay-edge.js';
import { hungOn, type Moves, relayLine } from './relay-line.js';

/**
 * Lays every run of a stitch file anew for a block of another size. Lines keep their stitch length, edges their width and
 * spacing, figures their size. A line that follows a seam, the outline or a line sewn before it at a constant distance
 * keeps that distance, so that allowances and what is sewn past a seam's end are never scaled.
 *
 * @param lines seams and outline of the block, in mm from the file's start, y down
 * @param leaveOut stops that are not sewn and need not be looked at
 * @throws InputError for every stop that holds a fill, which cannot be laid anew
 */
export function relayRuns(
  file: StitchFile,
  lines: readonly Points[],
  { scale, turn }: { readonly scale: number; readonly turn: number },
  leaveOut: ReadonlySet<number>,
): RelayRun {
  refuseFills(file, leaveOut);
  const turnBy = (v: Point): Point => turnedVector(v, turn);
  const place = ([x, y]: Point): Point => turnBy([scale * x, scale * y]);
  const bases: BaseLine[] = lines.map(baseLine);
  return (run) => {
    const laid: Point[] = [];
    for (const { kind, from, to } of partsOfRun(run)) {
      const points = run.slice(from, to + 1);
      // an edge follows a line with its middle, whose ends are guesses: its needle points are now nearer, now further
      const followed = kind === 'edge' ? middleLine(points).slice(1, -1) : points;
      const base = kind === 'figure' ? null : lineBeside(followed, bases);
      const moves: Moves = { place: base ? besideMoved(base, place, turnBy) : place, turn: turnBy };
      const again = relaidPart(kind, points, moves);
      if (kind === 'line' && !base) bases.push(baseOf(points));
      laid.push(...(laid.length ? again.slice(1) : again));
    }
    return laid.length ? laid : run.map(place);
  };
}

/** A point beside a line comes to lie beside the moved line, as far from it as it was. */
const besideMoved =
  ({ points }: BaseLine, place: (p: Point) => Point, turn: (v: Point) => Point) =>
  (p: Point): Point => {
    const { at } = nearestOn(p, points);
    const [x, y] = place(at);
    const [dx, dy] = turn([p[0] - at[0], p[1] - at[1]]);
    return [x + dx, y + dy];
  };

function relaidPart(kind: SewnPart['kind'], points: readonly Point[], moves: Moves): readonly Point[] {
  if (kind === 'edge') return relayEdge(points, moves);
  if (kind === 'line') return relayLine(points, moves);
  return hungOn(points, points[0], moves.place(points[0]), moves.turn);
}

function refuseFills(file: StitchFile, leaveOut: ReadonlySet<number>): void {
  const refused = stopsOf(file).flatMap(({ stop, runs }): InputError[] => {
    if (leaveOut.has(stop)) return [];
    const parts = runs.flatMap((run) => {
      const points = toPoints(run);
      return partsOfRun(points).map(({ kind, from, to }) => ({ kind, points: points.slice(from, to + 1) }));
    });
    const isFill = parts.some(({ kind }) => kind === 'fill');
    const area = coveredArea(parts.filter(({ kind }) => kind === 'line').map(({ points }) => points));
    if (!isFill && area === 0) return [];
    return [
      new InputError(
        'fill-of-other-size',
        `color stop ${stop}`,
        'it fills an area with thread, and a fill cannot be laid anew at another size',
        `leave this stop out with --leave-out ${stop}, or keep the size`,
      ),
    ];
  });
  if (refused.length > 1) throw new InputErrors(refused);
  if (refused.length === 1) throw refused[0];
}
