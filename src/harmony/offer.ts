import { askedLines } from '../asked/lines.js';
import type { SeamMap } from '../block/seam-map.js';
import { rowsOf, wholeReach } from '../fit/rows.js';
import { DRESSING_VERSION, type Dressing, type Row, type Work } from '../formats/dressing.js';
import type { SavedTreatment } from '../formats/treatment.js';
import type { Dictionary } from '../stitches/dictionary.js';
import type { Figure, Stitch } from '../stitches/stitch.js';
import { PALETTE } from './palette.js';
import { DEFAULT_PASSES } from './passes.js';

/** Something in the library that a seam can get: a stitch alone, or a saved treatment. */
export interface Offer {
  readonly name: string;
  readonly title: string;
  /** of its rows, each once */
  readonly stitches: readonly string[];
  /** of its first row */
  readonly family: string;
  /** ornaments and things put on by hand on its seats, each once */
  readonly accents: readonly string[];
  /** needs beads, ribbon or the like, which a machine has not got */
  readonly handwork: boolean;
  /** its rows and accents at scale 1; their threads count from 0 */
  readonly work: Work;
  /** across the seam, at scale 1, mm */
  readonly width: number;
  /** length of a repeat of the first row, at scale 1, mm */
  readonly repeat: number;
  /** how far it can be scaled and stay a good size */
  readonly least: number;
  readonly most: number;
}

/** What is scaled further than this no longer looks like itself. */
const LEAST_SCALE = 0.7;
const MOST_SCALE = 1.4;

/** A stitch alone at its usual size. */
export function stitchOffer(stitch: Stitch, dictionary: Dictionary): Offer {
  const more = stitch.threads.length - 1;
  const row: Row = {
    stitch: stitch.name,
    parameters: {},
    thread: 0,
    ...(more > 0 && { moreThreads: Array.from({ length: more }, (_, k) => k + 1) }),
    passes: DEFAULT_PASSES,
    offset: 0,
  };
  return offerOf(stitch, { rows: [row] }, dictionary);
}

export function treatmentOffer(saved: SavedTreatment, dictionary: Dictionary): Offer {
  const { rows, accents, laid, guide } = saved;
  const work: Work = { rows, ...(accents && { accents }), ...(laid && { laid }), ...(guide && { guide }) };
  return offerOf(saved, work, dictionary);
}

function offerOf({ name, title }: Pick<Figure, 'name' | 'title'>, work: Work, dictionary: Dictionary): Offer {
  const { width, repeat } = measured(work, dictionary);
  const scales = work.rows.flatMap((row) => scalesOf(row, dictionary.stitches.get(row.stitch)!));
  const accents = work.accents ?? [];
  return {
    name,
    title,
    stitches: [...new Set(work.rows.map(({ stitch }) => stitch))],
    family: dictionary.stitches.get(work.rows[0].stitch)!.family,
    accents: [...new Set(accents.map(({ ornament, byHand }) => ornament ?? byHand ?? ''))],
    handwork: Boolean(work.laid) || accents.some(({ byHand }) => byHand),
    work,
    width,
    repeat,
    // waves keep their height, so what is stitched on them keeps its size
    least: work.guide ? 1 : Math.min(1, Math.max(LEAST_SCALE, ...scales.map(([least]) => least))),
    most: work.guide ? 1 : Math.max(1, Math.min(MOST_SCALE, ...scales.map(([, most]) => most))),
  };
}

const sizeOf = ({ parameters }: Row, stitch: Stitch, name: 'repeat' | 'width') => {
  const { default: usual, min, max } = stitch.parameters.find((parameter) => parameter.name === name)!;
  return { value: parameters[name] ?? usual, least: Math.max(min, stitch.smallest[name]), max };
};

function scalesOf(row: Row, stitch: Stitch): [number, number][] {
  return (['repeat', 'width'] as const).map((name) => {
    const { value, least, max } = sizeOf(row, stitch, name);
    return [least / value, max / value];
  });
}

/** The work of an offer at another size: rows and their distances grow alike, figures on them as far as they may. */
export function scaledWork({ work }: Offer, scale: number, { stitches, ornaments }: Dictionary): Work {
  if (scale === 1) return work;
  const rows = work.rows.map((row): Row => {
    const sizes = (['repeat', 'width'] as const).map((name): [string, number] => {
      const { value, least, max } = sizeOf(row, stitches.get(row.stitch)!, name);
      return [name, tenths(Math.min(max, Math.max(Math.min(value, least), value * scale)))];
    });
    return {
      ...row,
      parameters: { ...row.parameters, ...Object.fromEntries(sizes) },
      offset: hundredths(row.offset * scale),
    };
  });
  const accents = work.accents?.map((accent) => {
    const size = ornaments.get(accent.ornament ?? '')?.parameters.find(({ name }) => name === 'size');
    const asked = accent.parameters.size ?? size?.default;
    const grown =
      size && asked !== undefined
        ? {
            ...accent.parameters,
            size: tenths(Math.min(size.max, Math.max(Math.min(asked, size.min), asked * scale))),
          }
        : accent.parameters;
    return { ...accent, parameters: grown };
  });
  return { ...work, rows, ...(accents && { accents }) };
}

const tenths = (mm: number): number => Math.round(mm * 10) / 10;
const hundredths = (mm: number): number => Math.round(mm * 100) / 100;

/** One straight seam: enough to learn how wide and long something is. */
const SAMPLE: SeamMap = {
  width: 100,
  height: 100,
  outline: null,
  seams: [
    {
      id: 1,
      closed: false,
      points: Float64Array.of(0, 50, 100, 50),
      corners: [],
      ends: [
        { kind: 'free', junction: -1 },
        { kind: 'free', junction: -1 },
      ],
      crossings: [],
      sides: [{ from: 0, to: 100, left: null, right: null }],
    },
  ],
  junctions: [],
  patches: [],
};

/** Width across and length of a repeat of some work, mm. */
export function measured(work: Work, dictionary: Dictionary): { width: number; repeat: number } {
  const dressing: Dressing = {
    format: 'seamwright-dressing',
    version: DRESSING_VERSION,
    block: { file: '', stops: null, snap: 0, through: [] },
    ends: 'tuck',
    outline: 'free',
    gap: 0,
    treatments: [
      { ...work, seam: { id: 1, middle: null, ends: null }, ends: null, side: 'left', reverse: false },
    ],
    threads: PALETTE,
    hoop: null,
    after: null,
    seed: 1,
  };
  const [{ ask }] = askedLines(SAMPLE, dressing, dictionary).lines;
  const { repeat } = ask.sized;
  const { left, right } = wholeReach(rowsOf(ask, false), 1, repeat);
  return { width: left + right, repeat };
}
