import { writeCsv } from '../formats/csv.js';
import type { DressReport } from './dress-report.js';
import { firstStitches } from './first-stitches.js';

/**
 * The color stops as a table for a spreadsheet, in the order of the machine: a heading, then a row each. `first stitch` is
 * the running number of the stitch that a stop begins with, for finding the place again.
 */
export function stopsCsv({ stops }: DressReport): string {
  const first = firstStitches(stops);
  const rows = stops.map(
    ({ stop, title, kind, seams, thread, stitches, jumps, trims, threadM, bobbinM, minutes }, i) => {
      return [
        stop,
        title,
        kind,
        // a spreadsheet would take 4-6 for a day
        seams.join(' '),
        thread?.name ?? '',
        thread?.hex ?? '',
        thread?.weight ?? '',
        stitches,
        first[i] ?? '',
        jumps,
        trims,
        threadM,
        bobbinM,
        minutes,
      ];
    },
  );
  return writeCsv([HEADING, ...rows]);
}

const HEADING = [
  'stop',
  'what',
  'kind',
  'seams',
  'thread',
  'color',
  'weight',
  'stitches',
  'first stitch',
  'jumps',
  'trims',
  'thread m',
  'bobbin m',
  'minutes',
];
