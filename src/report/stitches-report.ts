import type { Parameter, Stitch } from '../stitches/stitch.js';
import { table } from './table.js';

/** The dictionary as the data that programs get. Lengths in mm, angles in degrees. */
export interface StitchesReport {
  readonly stitches: readonly {
    readonly name: string;
    readonly title: string;
    readonly otherNames: readonly string[];
    readonly family: string;
    readonly from: 'built-in';
    readonly use: string;
    readonly parameters: readonly Parameter[];
  }[];
  readonly treatments: readonly never[];
  readonly ornaments: readonly never[];
}

export function stitchesReport(stitches: readonly Stitch[]): StitchesReport {
  return {
    stitches: stitches.map(({ name, title, otherNames, family, use, parameters }) => ({
      name,
      title,
      otherNames,
      family,
      from: 'built-in',
      use,
      parameters,
    })),
    treatments: [],
    ornaments: [],
  };
}

export function stitchesText(stitches: readonly Stitch[]): string {
  return [
    table(
      [
        { heading: 'Name' },
        { heading: 'Stitch' },
        { heading: 'Also called' },
        { heading: 'Family' },
        { heading: 'Repeat x width mm' },
      ],
      stitches.map((stitch) => [
        stitch.name,
        stitch.title,
        stitch.otherNames.join(', '),
        stitch.family,
        `${preset(stitch, 'repeat')} x ${preset(stitch, 'width')}`,
      ]),
    ),
    '',
    'seamwright stitches NAME tells more about one.',
  ].join('\n');
}

export function stitchText(stitch: Stitch): string {
  const also = stitch.otherNames.length ? ` (also called ${stitch.otherNames.join(', ')})` : '';
  return [
    `${stitch.title}${also}`,
    stitch.use,
    `Smallest good size in No. 40 thread: repeat ${stitch.smallest.repeat} mm, width ${stitch.smallest.width} mm.`,
    '',
    table(
      [
        { heading: 'Parameter' },
        { heading: 'What it is' },
        { heading: 'Unit' },
        { heading: 'Usual', figures: true },
        { heading: 'Least', figures: true },
        { heading: 'Most', figures: true },
      ],
      stitch.parameters.map((p) => [
        p.name,
        p.title,
        p.unit,
        String(p.default),
        String(p.min),
        String(p.max),
      ]),
    ),
  ].join('\n');
}

const preset = (stitch: Stitch, name: string): string =>
  String(stitch.parameters.find((parameter) => parameter.name === name)?.default ?? '');
