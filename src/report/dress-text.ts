import type { DressReport, FitLine, StopLine } from './dress-report.js';
import { lookHere } from './look-here.js';
import { numberList, table } from './table.js';

/** The report as a maker reads it: a table of color stops, the sums, then what is worth a look. */
export function dressText(report: DressReport): string {
  const { totals } = report;
  return [
    table(
      [
        { heading: 'Stop', figures: true },
        { heading: 'What' },
        { heading: 'Seams' },
        { heading: 'Repeats' },
        { heading: 'Stitches', figures: true },
        { heading: 'Thread' },
        { heading: 'm', figures: true },
        { heading: 'Minutes', figures: true },
      ],
      report.stops.map((stop) => [
        String(stop.stop),
        stop.title,
        numberList(stop.seams),
        repeats(stop, report.fits),
        String(stop.stitches),
        stop.thread ? `${stop.thread.name} ${stop.thread.weight}` : '',
        stop.threadM.toFixed(1),
        stop.minutes.toFixed(1),
      ]),
    ),
    '',
    `${totals.stops} color stops, ${totals.stitches} stitches, ${totals.threadM.toFixed(1)} m of thread, ` +
      `about ${Math.ceil(totals.minutes)} minutes; ${totals.widthMm} x ${totals.heightMm} mm.`,
    '',
    lookHere(report.findings),
    ...(report.outputs.length ? ['', `Made ${report.outputs.join(', ')}`] : []),
  ].join('\n');
}

/** '9 of 8.2 mm'; for several seams in one stop, their sum and the range of lengths. */
function repeats(stop: StopLine, fits: readonly FitLine[]): string {
  const own = fits.filter((fit) => fit.repeats > 0 && stop.seams.includes(fit.seam));
  if (!own.length) return '';
  const lengths = own.map((fit) => fit.repeatMm);
  const [least, most] = [Math.min(...lengths).toFixed(1), Math.max(...lengths).toFixed(1)];
  const sum = own.reduce((all, fit) => all + fit.repeats, 0);
  return `${sum} of ${least === most ? least : `${least} to ${most}`} mm`;
}
