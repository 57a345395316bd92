import type { StitchFile } from '../../formats/stitch-file.js';
import { type FileStop, stopsOf } from '../../formats/stops.js';
import { distance, type Point } from '../../geometry/point.js';
import { fromPoints, type Points, toPoints } from '../../geometry/polyline.js';
import { InputError } from '../../input-error.js';
import { SEAM_ALLOWANCE } from '../sewn-lines.js';
import { withoutMarks } from '../sewn-marks.js';
import { mergePasses } from '../sewn-merge.js';
import { MOST_STITCHES, type Pass, sewnPasses } from '../sewn-passes.js';
import { lay } from '../sewn-path.js';
import { coveredArea, partsOfRun, type SewnKind } from '../stop-kinds.js';
import { flowingShare } from './flowing.js';

/** What a color stop sews, as lines: mm from the file's start, y down. */
export interface StopLines {
  readonly stop: number;
  readonly kind: SewnKind | 'nothing';
  /** the lines that it follows, once each, without small marks; of a zigzag its middle */
  readonly lines: readonly Points[];
  /** how often it goes over them */
  readonly passes: number;
  /** how much of them goes on without a corner for as long as seams do: 0 to 1 */
  readonly flowing: number;
  /** of a zigzag, mm */
  readonly width: number;
}

/** The lines of every stop of a file. Cost: n log n in the stitches. */
export function linesOfStops(file: StitchFile): StopLines[] {
  return stopsOf(file).map((stop) => linesOfStop(file, stop));
}

function linesOfStop(file: StitchFile, stop: FileStop): StopLines {
  const nothing = { stop: stop.stop, lines: [], passes: 0, flowing: 0, width: 0 };
  if (stop.stitches === 0) return { ...nothing, kind: 'nothing' };
  const runs = stop.runs.map(toPoints);
  const kind = mainKind(runs);
  if (kind === 'edge') return { ...nothing, kind, passes: 1, ...middleOf(runs) };
  if (kind !== 'line' || stop.stitches > MOST_STITCHES) return { ...nothing, kind };
  try {
    const passes = sewnPasses(file, [stop.stop], '');
    const paths = withoutMarks(mergePasses(passes, SEAM_ALLOWANCE));
    const lines = paths.map((path) => fromPoints(lay(path).points));
    const once = lines.reduce((sum, line) => sum + lengthOf(toPoints(line)), 0);
    const sewn = passes.reduce((sum, pass: Pass) => sum + lengthOf(pass.points), 0);
    return {
      ...nothing,
      kind,
      lines,
      passes: once > 0 ? sewn / once : 0,
      flowing: flowingShare(passes.map(({ points }) => points)),
    };
  } catch (error) {
    // what is no line of plain stitches after all
    if (error instanceof InputError) return { ...nothing, kind: 'figure' };
    throw error;
  }
}

/** What most of the thread of a stop is. */
function mainKind(runs: readonly (readonly Point[])[]): SewnKind {
  const sums: Record<SewnKind, number> = { line: 0, edge: 0, figure: 0, fill: 0 };
  for (const run of runs) {
    for (const { kind, from, to } of partsOfRun(run)) sums[kind] += lengthOf(run.slice(from, to + 1));
  }
  if (sums.line > 0 && coveredArea(runs) > 0 && sums.edge < sums.line) return 'fill';
  const kinds: SewnKind[] = ['line', 'edge', 'fill', 'figure'];
  return kinds.reduce((a, b) => (sums[b] > sums[a] ? b : a));
}

/** The middle line of the zigzags in a stop, and how wide they are. */
function middleOf(runs: readonly (readonly Point[])[]): { lines: Points[]; width: number } {
  const widths: number[] = [];
  const lines = runs.flatMap((run) =>
    partsOfRun(run)
      .filter(({ kind }) => kind === 'edge')
      .map(({ from, to }) => {
        const points = run.slice(from, to + 1);
        widths.push(...points.slice(1).map((p, i) => distance(points[i], p)));
        return fromPoints(
          points.slice(1).map((p, i): Point => [(p[0] + points[i][0]) / 2, (p[1] + points[i][1]) / 2]),
        );
      }),
  );
  widths.sort((a, b) => a - b);
  return { lines, width: widths[widths.length >> 1] ?? 0 };
}

function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) sum += distance(points[i - 1], points[i]);
  return sum;
}
