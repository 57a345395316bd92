import type { StitchFile } from '../formats/stitch-file.js';
import type { Point } from '../geometry/point.js';
import { fromPoints } from '../geometry/polyline.js';
import type { LineDrawing } from './drawn-line.js';
import { settleEnds } from './sewn-ends.js';
import { boxOf } from './sewn-loose-lines.js';
import { withoutMarks } from './sewn-marks.js';
import { mergePasses } from './sewn-merge.js';
import { sewnPasses } from './sewn-passes.js';
import { beyondEnds, lay, type SewnPath, withoutOverruns } from './sewn-path.js';

/** What seams are sewn past a junction or the outline: 1/4 inch, the usual seam allowance (common practice). */
export const SEAM_ALLOWANCE = 6.35;

/**
 * The lines that chosen color stops of a stitch file sew, as a drawing of lines. Seams sewn out and back, with ties, in
 * one stretch per stop or all in one, come out as one line each, made of straight sides and arcs; corners are where
 * sides meet. What runs over a junction or the outline by less than the seam allowance is cut. The frame's corner
 * (0, 0) is at the upper left of the lines; file = frame + origin, mm from the file's start, y down.
 * @param stops numbers of color stops, from 1
 * @param where the file's name, for messages
 * @throws InputError for a stop that does not exist, is empty, or is no seam (zigzag, satin, ties only)
 */
export function sewnLines(file: StitchFile, stops: readonly number[], where: string): LineDrawing {
  const sewn = withoutMarks(mergePasses(sewnPasses(file, stops, where), SEAM_ALLOWANCE));
  const roughly = settled(sewn);
  const paths = sewn.map((path, i) => withoutOverruns(path, roughly[i]));
  const lines = settled(paths);
  const [left, top, right, bottom] = boxOf(lines.flat());
  return {
    width: right - left,
    height: bottom - top,
    origin: [left, top],
    lines: lines.map((points, i) => ({
      points: fromPoints(points.map(([x, y]): Point => [x - left, y - top])),
      closed: paths[i].closed,
      fill: null,
      where: `${where} stop ${paths[i].stop}`,
      sewn: paths[i].order,
    })),
  };
}

const settled = (paths: readonly SewnPath[]): Point[][] =>
  settleEnds(
    paths.map((path) => ({ points: lay(path).points, closed: path.closed, beyond: beyondEnds(path) })),
    SEAM_ALLOWANCE,
  );
