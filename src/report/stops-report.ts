import type { StitchFile } from '../formats/stitch-file.js';
import { stopsOf } from '../formats/stops.js';
import { polylineLength } from '../geometry/polyline.js';
import { counted, rounded, table } from './table.js';

/** The color stops of a stitch file, so that a maker can say which of them are the seams. */
export interface StopsReport {
  readonly stops: readonly {
    readonly stop: number;
    readonly stitches: number;
    readonly jumps: number;
    readonly sewnMm: number;
    readonly segments: number;
  }[];
}

export function stopsReport(file: StitchFile): StopsReport {
  return {
    stops: stopsOf(file).map(({ stop, stitches, jumps, runs }) => ({
      stop,
      stitches,
      jumps,
      sewnMm: rounded(
        runs.reduce((sum, run) => sum + polylineLength(run), 0),
        1,
      ),
      segments: runs.length,
    })),
  };
}

export function stopsText(name: string, { stops }: StopsReport): string {
  return [
    `${name}: a stitch file of ${counted(stops.length, 'color stop')}`,
    '',
    table(
      ['Stop', 'Stitches', 'Jumps', 'Sewn mm', 'Stretches'].map((heading) => ({ heading, figures: true })),
      stops.map((stop) =>
        [stop.stop, stop.stitches, stop.jumps, stop.sewnMm.toFixed(1), stop.segments].map(String),
      ),
    ),
    '',
    'Name the stops that are the seams with --stops, such as --stops 1,2.',
  ].join('\n');
}
