import type { Spread } from '../check/density/tally.js';
import type { Measured } from '../check/density/total.js';
import type { Examined } from '../check/examine.js';
import type { HoopFit } from '../check/hoops.js';
import { type Finding, worstFirst } from '../finding.js';
import type { ThreadLook } from '../thread-look.js';
import { type ContrastReport, contrastReport, contrastText } from './contrast-report.js';
import { lookHere, type Paint } from './look-here.js';
import { counted, rounded, table } from './table.js';

/** What a look at the stitches tells, as the data that programs get. */
export interface CheckReport {
  readonly holesPerMm2: Spread;
  readonly layers: Spread;
  readonly cover: { readonly max: number; readonly mean: number };
  readonly stitchMm: { readonly min: number; readonly max: number; readonly mean: number };
  readonly perStop: readonly StopDensity[];
  readonly hoop: HoopFit | null;
  /** how threads stand out from fabrics and from each other; not of a stitch file, which has no colors */
  readonly contrast?: ContrastReport;
  /** worst first */
  readonly findings: readonly Finding[];
}

/** A color stop by itself, and with all that is sewn before it. */
export interface StopDensity {
  /** from 1 */
  readonly stop: number;
  readonly title: string;
  readonly stitches: number;
  readonly alone: DensityNumbers;
  readonly soFar: DensityNumbers;
}

type DensityNumbers = Pick<CheckReport, 'holesPerMm2' | 'layers' | 'cover'>;

/** @param said findings of the work itself, beside those of its stitches
 * @param look at its threads, where colors are known */
export function checkReport(
  examined: Examined,
  hoop: HoopFit | null,
  said: readonly Finding[],
  look?: ThreadLook,
): CheckReport {
  const { density, lengths, stitches, stops } = examined;
  return {
    ...numbersOf(density.whole),
    stitchMm: { min: rounded(lengths.min, 2), max: rounded(lengths.max, 2), mean: rounded(lengths.mean, 2) },
    perStop: density.stops.map(({ alone, soFar }, i) => ({
      stop: i + 1,
      title: stops[i].title,
      stitches: stitches.stops[i].to - stitches.stops[i].from,
      alone: numbersOf(alone),
      soFar: numbersOf(soFar),
    })),
    hoop,
    ...(look && { contrast: contrastReport(look) }),
    findings: worstFirst([...examined.findings, ...(look?.findings ?? []), ...said]),
  };
}

function numbersOf({ holesPerMm2, layers, cover }: Measured): DensityNumbers {
  const spread = ({ max, p99, mean }: Spread): Spread => ({
    max: rounded(max, 2),
    p99: rounded(p99, 2),
    mean: rounded(mean, 2),
  });
  return {
    holesPerMm2: spread(holesPerMm2),
    layers: spread(layers),
    cover: { max: rounded(cover.max, 3), mean: rounded(cover.mean, 3) },
  };
}

/** The same for a person to read. */
export function checkText(name: string, report: CheckReport, paint?: Paint): string {
  const { holesPerMm2, layers, cover, stitchMm, perStop, hoop, contrast } = report;
  const count = perStop.reduce((sum, { stitches }) => sum + stitches, 0);
  const spread = ({ max, p99, mean }: Spread) => [mean.toFixed(1), p99.toFixed(1), max.toFixed(1)];
  return [
    `${name}: ${counted(count, 'stitch', 'es')} in ${counted(perStop.length, 'color stop')}`,
    '',
    table(
      [
        { heading: 'Within 1 mm of a stitch' },
        { heading: 'Mean', figures: true },
        { heading: '99 % below', figures: true },
        { heading: 'Most', figures: true },
      ],
      [
        ['Holes a mm2', ...spread(holesPerMm2)],
        ['Threads one over another', ...spread(layers)],
        ['Cloth under thread, %', percent(cover.mean), '', percent(cover.max)],
      ],
    ),
    `Stitches are ${stitchMm.min.toFixed(1)} to ${stitchMm.max.toFixed(1)} mm long, ${stitchMm.mean.toFixed(1)} mm on the average.`,
    ...(hoop ? [hoopText(hoop)] : []),
    '',
    table(
      [
        { heading: 'Stop', figures: true },
        { heading: 'What' },
        { heading: 'Stitches', figures: true },
        { heading: 'Holes', figures: true },
        { heading: 'so far', figures: true },
        { heading: 'Threads', figures: true },
        { heading: 'so far', figures: true },
        { heading: 'Cover %', figures: true },
      ],
      perStop.map(({ stop, title, stitches, alone, soFar }) => [
        String(stop),
        title,
        String(stitches),
        alone.holesPerMm2.max.toFixed(1),
        soFar.holesPerMm2.max.toFixed(1),
        String(alone.layers.max),
        String(soFar.layers.max),
        percent(alone.cover.mean),
      ]),
    ),
    'Holes and threads: the most at any place, of the stop alone and with all that is sewn before it.',
    '',
    ...(contrast?.threads.length ? [contrastText(contrast), ''] : []),
    lookHere(report.findings, paint),
  ].join('\n');
}

const percent = (share: number) => String(Math.round(100 * share));
const hoopText = ({ name, fits, turned }: HoopFit) =>
  fits
    ? `It fits the sewing field of ${name}${turned ? ', turned' : ''}.`
    : `It does not fit the sewing field of ${name}.`;
