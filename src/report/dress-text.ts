import { lineName } from '../finding.js';
import type { DressReport, FitLine, StopLine } from './dress-report.js';
import { lookHere, type Paint } from './look-here.js';
import { counted, numberList, table } from './table.js';

/** The report as a maker reads it: a table of color stops, the sums, then what is worth a look. */
export function dressText(report: DressReport, paint?: Paint): string {
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
      lines(report.stops).map((group) => [
        group.length > 1 ? `${group[0].stop}-${group[group.length - 1].stop}` : String(group[0].stop),
        group[0].title,
        numberList(group[0].seams),
        worked(group[0]),
        String(sum(group, (stop) => stop.stitches)),
        group[0].thread ? `${group[0].thread.name} ${group[0].thread.weight}` : '',
        sum(group, (stop) => stop.threadM).toFixed(1),
        sum(group, (stop) => stop.minutes).toFixed(1),
      ]),
    ),
    '',
    totalsText(report),
    '',
    ...(report.byHand ? [byHandText(report.byHand), ''] : []),
    ...whyText(report.fits),
    lookHere(report.findings, paint),
    '',
    report.outputs.length
      ? `Made ${report.outputs.join(', ')}`
      : 'Nothing was written; --out NAME.dst, NAME.svg and so on says what to make.',
  ].join('\n');
}

/** The sums in a sentence. */
export const totalsText = ({ totals, hoop }: DressReport): string =>
  `${counted(totals.stops, 'color stop')}, ${counted(totals.stitches, 'stitch', 'es')}, ` +
  `${totals.threadM.toFixed(1)} m of thread and ${totals.bobbinM.toFixed(1)} m on the bobbin, ` +
  `about ${counted(Math.ceil(totals.minutes), 'minute')}; ${totals.widthMm} x ${totals.heightMm} mm${inHoop(hoop)}.`;

/** Where it lies; that it does not fit is told as a finding. */
const inHoop = (hoop: DressReport['hoop']): string =>
  hoop?.fits ? `, in a sewing field of ${hoop.name}${hoop.turned ? ', turned' : ''}` : '';

/** Of a mixed block, a line for each seam. */
function whyText(fits: readonly FitLine[]): string[] {
  const told = fits.flatMap(({ seam, why }) => (why === undefined ? [] : [{ name: lineName(seam), why }]));
  if (told.length === 0) return [];
  const width = Math.max(...told.map(({ name }) => name.length));
  return ['Why each has what it has:', ...told.map(({ name, why }) => `  ${name.padEnd(width)}  ${why}`), ''];
}

/** 'By hand afterwards: 12 of bead on seam 3.' */
function byHandText(byHand: NonNullable<DressReport['byHand']>): string {
  const items = byHand.map(({ what, seam, count }) => `${count} x ${what} on ${lineName(seam)}`);
  return `By hand afterwards, not sewn: ${items.join(', ')}.`;
}

/** Stops as they share a line: each has its own, apart from neighbors that came with the block. */
function lines(stops: readonly StopLine[]): StopLine[][] {
  const groups: StopLine[][] = [];
  for (const stop of stops) {
    const last = groups[groups.length - 1];
    if (last?.[0].kind === 'existing' && stop.kind === 'existing') last.push(stop);
    else groups.push([stop]);
  }
  return groups;
}

const sum = (stops: readonly StopLine[], what: (stop: StopLine) => number): number =>
  stops.reduce((all, stop) => all + what(stop), 0);

/** '9 of 8.2 mm', or '12 figures' of an accent. */
function worked({ repeats, figures }: StopLine): string {
  if (repeats) return `${repeats.repeats} of ${repeats.repeatMm.toFixed(1)} mm`;
  return figures === undefined ? '' : counted(figures, 'figure');
}
