import type { SavedTreatment } from '../formats/treatment.js';
import type { InputError } from '../input-error.js';
import { largerFor } from '../needle/craft.js';
import type { Dictionary } from '../stitches/dictionary.js';
import type { Figure, Ornament, Parameter, Stitch } from '../stitches/stitch.js';
import { table } from './table.js';

/** Whose an entry is. */
export type From = 'built-in' | 'personal';
type Shelf = keyof Dictionary;

/** What is known of where the entries of a dictionary come from. */
export interface Origins {
  readonly personalFolder: string;
  readonly personal: Readonly<Record<Shelf, { has(name: string): boolean }>>;
  /** personal ones that stand before a built-in one of their name */
  readonly hidden: Readonly<Record<Shelf, readonly string[]>>;
  /** personal files that could not be read */
  readonly unread: readonly InputError[];
}

interface Entry {
  readonly name: string;
  readonly title: string;
  readonly otherNames: readonly string[];
  readonly from: From;
  /** it stands before a built-in one of the same name */
  readonly standsBefore: boolean;
  readonly use: string;
}

export interface FigureEntry extends Entry {
  readonly family: string;
  readonly threads: readonly string[];
  readonly seats: readonly string[];
  /** smallest good size with No. 40 thread, mm, by parameter */
  readonly smallest: Readonly<Record<string, number>>;
  readonly parameters: readonly Parameter[];
}

export interface TreatmentEntry extends Entry {
  readonly rows: readonly string[];
  readonly accents: readonly string[];
  readonly threads: readonly string[];
}

/** The dictionary as the data that programs get. Lengths in mm, angles in degrees. */
export interface DictionaryReport {
  readonly stitches: readonly FigureEntry[];
  readonly treatments: readonly TreatmentEntry[];
  readonly ornaments: readonly FigureEntry[];
  /** files of the maker's own that could not be read, a line each */
  readonly unread: readonly string[];
}

export function dictionaryReport(shown: Dictionary, origins: Origins): DictionaryReport {
  const entry = (shelf: Shelf, { name, title, otherNames, use }: Figure | SavedTreatment): Entry => ({
    name,
    title,
    otherNames,
    from: origins.personal[shelf].has(name) ? 'personal' : 'built-in',
    standsBefore: origins.hidden[shelf].includes(name),
    use,
  });
  const figure = (shelf: Shelf, one: Stitch | Ornament): FigureEntry => ({
    ...entry(shelf, one),
    family: one.family,
    threads: one.threads.filter(Boolean),
    seats: [...new Set(one.build({}).seats.map(({ name }) => name))],
    smallest: one.smallest,
    parameters: one.parameters,
  });
  const treatment = (one: SavedTreatment): TreatmentEntry => ({
    ...entry('treatments', one),
    rows: one.rows.map(({ stitch }) => stitch),
    accents: (one.accents ?? []).map(({ ornament, byHand }) => ornament ?? byHand ?? ''),
    threads: one.threads.map(({ name }) => name),
  });
  return {
    stitches: [...shown.stitches.values()].map((one) => figure('stitches', one)),
    treatments: [...shown.treatments.values()].map(treatment),
    ornaments: [...shown.ornaments.values()].map((one) => figure('ornaments', one)),
    unread: origins.unread.map(({ message }) => message),
  };
}

/** The whole dictionary for people. */
export function dictionaryText(report: DictionaryReport, origins: Origins): string {
  const { stitches, ornaments, treatments, unread } = report;
  const anyOwn = [...stitches, ...ornaments, ...treatments].some(({ from }) => from === 'personal');
  const parts = [
    headed('Stitches', figureTable(stitches, 'Repeat x width mm', ['repeat', 'width'])),
    headed('Ornaments', ornaments.length ? figureTable(ornaments, 'Size mm', ['size']) : ''),
    headed('Treatments', treatments.length ? treatmentTable(treatments) : ''),
    anyOwn ? `Your own are in ${origins.personalFolder}.` : `Your own would be in ${origins.personalFolder}.`,
    unread.length ? ['Left out:', ...unread.map((line) => `  ${line}`)].join('\n') : '',
    'seamwright stitches NAME tells more about one.',
  ];
  return parts.filter(Boolean).join('\n\n');
}

/** Threads in which the smallest good size is larger than in No. 40. */
const THICKER = ['No. 30', 'No. 12'];

/** One entry for people. */
export function entryText({ stitches, ornaments, treatments }: DictionaryReport): string {
  const figure = stitches[0] ?? ornaments[0];
  if (!figure) return treatmentText(treatments[0]);
  const sizes = Object.entries(figure.smallest).map(([name, mm]) => `${name} ${mm} mm`);
  const larger = THICKER.map((weight) => `${largerFor(weight).toFixed(2)} times that in ${weight}`);
  return [
    ...headLines(figure),
    `Smallest good size in No. 40 thread: ${sizes.join(', ')}; ${larger.join(', ')}.`,
    ...(figure.threads.length ? [`Threads: ${figure.threads.join(', ')}.`] : []),
    ...(figure.seats.length ? [`Seats for accents: ${figure.seats.join(', ')}.`] : []),
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
      figure.parameters.map(({ name, title, unit, default: usual, min, max }) => [
        name,
        title,
        unit,
        ...[usual, min, max].map(String),
      ]),
    ),
  ].join('\n');
}

function treatmentText(treatment: TreatmentEntry): string {
  return [
    ...headLines(treatment),
    `Rows: ${treatment.rows.join(', ')}.`,
    ...(treatment.accents.length ? [`Accents: ${treatment.accents.join(', ')}.`] : []),
    `Threads: ${treatment.threads.join(', ')}.`,
  ].join('\n');
}

function headLines({ title, otherNames, use, from, standsBefore }: Entry): string[] {
  const also = otherNames.length ? ` (also called ${otherNames.join(', ')})` : '';
  const own =
    from === 'personal' ? [standsBefore ? 'Your own; it stands before the built-in one.' : 'Your own.'] : [];
  return [`${title}${also}`, use, ...own];
}

const headed = (heading: string, text: string): string => text && `${heading}\n\n${text}`;

const whose = ({ from, standsBefore }: Entry): string =>
  from === 'built-in' ? '' : standsBefore ? 'yours, before the built-in one' : 'yours';

function figureTable(entries: readonly FigureEntry[], sizes: string, names: readonly string[]): string {
  const usual = ({ parameters }: FigureEntry) =>
    names.map((name) => parameters.find((one) => one.name === name)?.default).join(' x ');
  return table(
    [
      { heading: 'Name' },
      { heading: 'Title' },
      { heading: 'Also called' },
      { heading: 'Family' },
      { heading: sizes },
      { heading: 'Whose' },
    ],
    entries.map((entry) => [
      entry.name,
      entry.title,
      entry.otherNames.join(', '),
      entry.family,
      usual(entry),
      whose(entry),
    ]),
  );
}

function treatmentTable(entries: readonly TreatmentEntry[]): string {
  return table(
    [
      { heading: 'Name' },
      { heading: 'Title' },
      { heading: 'Rows' },
      { heading: 'Accents' },
      { heading: 'Whose' },
    ],
    entries.map((entry) => [
      entry.name,
      entry.title,
      entry.rows.join(', '),
      entry.accents.join(', '),
      whose(entry),
    ]),
  );
}
