import { type Recognized, ROLE_NAMES, type Role } from '../block/roles/role.js';
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
    /** what it was taken for, and why */
    readonly role: Role;
    readonly evidence: string;
  }[];
}

export function stopsReport(file: StitchFile, { roles }: Pick<Recognized, 'roles'>): StopsReport {
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
      role: roles[stop - 1].role,
      evidence: roles[stop - 1].evidence,
    })),
  };
}

export function stopsText(name: string, { stops }: StopsReport): string {
  return [
    `${name}: a stitch file of ${counted(stops.length, 'color stop')}`,
    '',
    table(
      [
        { heading: 'Stop', figures: true },
        { heading: 'Stitches', figures: true },
        { heading: 'Sewn mm', figures: true },
        { heading: 'Taken for' },
        { heading: 'Because' },
      ],
      stops.map(({ stop, stitches, sewnMm, role, evidence }) => [
        String(stop),
        String(stitches),
        sewnMm.toFixed(1),
        ROLE_NAMES[role],
        evidence,
      ]),
    ),
    '',
    'Where that is wrong, --role 3=seam,7=edge says what a stop is, and --stops names those that are the seams.',
  ].join('\n');
}
