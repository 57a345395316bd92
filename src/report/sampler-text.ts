import type { Sample } from '../sampler.js';
import type { DressReport } from './dress-report.js';
import { lookHere, type Paint } from './look-here.js';
import { counted, numberList, table } from './table.js';

/** What each number of a sampler is: its stops and threads, and the seams of the block that it is for. */
export function samplerText(samples: readonly Sample[], report: DressReport, paint?: Paint): string {
  const { totals, stops, outputs } = report;
  const rows = samples.flatMap(({ number, line, seams }) => {
    const own = stops.filter((stop) => stop.seams.includes(line));
    return own.map(({ stop, title, thread, minutes }, k) => [
      k === 0 ? String(number) : '',
      String(stop),
      title.replace(/, number \d+$/, ''),
      thread ? `${thread.name} ${thread.weight}` : '',
      k === 0 ? numberList(seams) : '',
      minutes.toFixed(1),
    ]);
  });
  return [
    table(
      [
        { heading: 'Number', figures: true },
        { heading: 'Stop', figures: true },
        { heading: 'What' },
        { heading: 'Thread' },
        { heading: 'For seams' },
        { heading: 'Minutes', figures: true },
      ],
      rows,
    ),
    '',
    `${counted(totals.stops, 'color stop')}, the first of them the numbers; about ${counted(Math.ceil(totals.minutes), 'minute')}; ` +
      `${totals.widthMm} x ${totals.heightMm} mm.`,
    '',
    lookHere(report.findings, paint),
    '',
    outputs.length
      ? `Made ${outputs.join(', ')}`
      : 'Nothing was written; --out NAME.dst, NAME.svg and so on says what to make.',
  ].join('\n');
}
