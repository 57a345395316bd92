import { passesIn } from '../../src/asked/heaviness.js';
import type { Block } from '../../src/block/block.js';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import type { Seam } from '../../src/block/seam-map.js';
import { referenceTo } from '../../src/fit/seam-reference.js';
import {
  type BlockSource,
  DRESSING_VERSION,
  type Dressing,
  type PlacedOrnament,
  type ThreadChoice,
  type Work,
} from '../../src/formats/dressing.js';
import type { SavedTreatment } from '../../src/formats/treatment.js';
import { moreThreads, USUAL_THREADS } from '../../src/plan.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import type { Figure, Ornament, Stitch } from '../../src/stitches/stitch.js';

/** A hint of the hand. */
const BY_HAND = 1 / 3;
const PASSES = 3;

/** Something to draw: a block, and what it is dressed in. */
export interface Sheet {
  readonly block: Block;
  readonly dressing: Dressing;
}

/** The lines of a sheet: the usual size on every kind of line, then three sizes, then three weights. */
const lines = [
  { kind: 'straight', d: 'M12 20H92', middle: [52, 20] },
  { kind: 'gentle curve', d: 'M104 28Q141 8 178 28', middle: [141, 18] },
  { kind: 'tight curve', d: 'M14 64a11 11 0 0 1 22 0a11 11 0 0 0 22 0a11 11 0 0 1 22 0', middle: [47, 75] },
  { kind: 'corner', d: 'M100 50H132V84', middle: [132, 50] },
  { kind: 'ring', d: 'M164 53a15 15 0 0 1 0 30a15 15 0 0 1 0 -30Z', middle: [164, 83] },
  { kind: 'small', d: 'M12 108H62', middle: [37, 108] },
  { kind: 'usual', d: 'M70 108H120', middle: [95, 108] },
  { kind: 'large', d: 'M128 108H178', middle: [153, 108] },
  { kind: 'light', d: 'M12 142H62', middle: [37, 142] },
  { kind: 'medium', d: 'M70 142H120', middle: [95, 142] },
  { kind: 'heavy', d: 'M128 142H178', middle: [153, 142] },
] as const;
type Kind = (typeof lines)[number]['kind'];

const weights: Partial<Record<Kind, number>> = { light: -1, heavy: 2 };
const sizes: Partial<Record<Kind, 'small' | 'large'>> = { small: 'small', large: 'large' };

const drawing = (content: string, width = 190, height = 160) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${content}</svg>`;
/** On this cloth every usual thread stands out, pale or deep. */
const cloth = (width: number, height: number) => `<rect fill="#a9adb0" width="${width}" height="${height}"/>`;
const seams = drawing(
  cloth(190, 160) + lines.map(({ d }) => `<path fill="none" stroke="#000" d="${d}"/>`).join(''),
);
const source = (file: string): BlockSource => ({ file, stops: null, snap: 0.3, through: [] });

export const stitchSheet = (stitch: Stitch): Promise<Sheet> =>
  seamSheet(stitch.name, USUAL_THREADS, (kind) => ({
    rows: [
      {
        stitch: stitch.name,
        parameters: sized(stitch, sizes[kind]),
        thread: 0,
        ...moreThreads(stitch),
        passes: PASSES + (weights[kind] ?? 0),
        offset: 0,
      },
    ],
  }));

export const treatmentSheet = (treatment: SavedTreatment, dictionary: Dictionary): Promise<Sheet> =>
  seamSheet(treatment.name, treatment.threads, (kind) => {
    const factor = sizes[kind] === 'small' ? 0.75 : sizes[kind] === 'large' ? 1.35 : 1;
    const heavier = weights[kind] ?? 0;
    const { rows, accents, laid, guide } = treatment;
    const scaled = (figure: Figure | undefined, given: Readonly<Record<string, number>>) =>
      figure ? withFactor(figure, given, factor) : given;
    return {
      rows: rows.map((row) => ({
        ...row,
        parameters: scaled(dictionary.stitches.get(row.stitch), row.parameters),
        offset: row.offset * factor,
        heavy: undefined,
        passes: Math.max(1, passesIn(treatment, row) + heavier),
      })),
      ...(accents && {
        accents: accents.map((accent) => ({
          ...accent,
          parameters: scaled(
            accent.ornament === null ? undefined : dictionary.ornaments.get(accent.ornament),
            accent.parameters,
          ),
          heavy: undefined,
          passes: Math.max(1, passesIn(treatment, accent) + heavier),
        })),
      }),
      ...(laid && { laid }),
      ...(guide && { guide }),
    };
  });

/** Thread for ornaments: the usual four, and the shades that a flower and its leaves want. */
const SHADES: readonly ThreadChoice[] = [
  ...USUAL_THREADS,
  { name: 'Rose', hex: '#b5606b', weight: 'No. 40' },
  { name: 'Pale rose', hex: '#dca9a7', weight: 'No. 40' },
  { name: 'Moss', hex: '#4a5f33', weight: 'No. 40' },
];
/** Which of them a part of an ornament gets; others are garnet first, and gold. */
const SHADE_OF: Readonly<Record<string, number>> = {
  leaves: 2,
  'middle round': 4,
  'outer round': 5,
  stem: 6,
};

/** Three sizes above, three weights below, on a cloth no larger than they need: a knot is to be seen as well as a web. */
export async function ornamentSheet(ornament: Ornament): Promise<Sheet> {
  const size = ornament.parameters.find(({ name }) => name === 'size')!;
  const large = Math.min(size.max, 44, size.default * 1.7);
  const [thread, ...moreThreads] = ornament.threads.map((part, k) => SHADE_OF[part] ?? (k === 0 ? 1 : 0));
  const at = (x: number, y: number, mm: number, passes: number): PlacedOrnament => ({
    ornament: ornament.name,
    at: [x, y],
    parameters: { size: mm },
    thread,
    moreThreads,
    passes,
  });
  const width = Math.round(Math.min(190, Math.max(36, 4.4 * large)));
  const height = Math.round(0.68 * width);
  const drawn = drawing(cloth(width, height), width, height);
  const block = await readSvgBlock(drawn, ornament.name, source(ornament.name));
  const [left, middle, right] = [width / 6, width / 2, (5 * width) / 6];
  const [upper, lower] = [0.34 * height, 0.8 * height];
  return {
    block,
    dressing: {
      ...plain(ornament.name, SHADES),
      treatments: [],
      ornaments: [
        at(left, upper, ornament.smallest.size, PASSES),
        at(middle, upper, size.default, PASSES),
        at(right, upper, large, PASSES),
        at(left, lower, size.default, PASSES - 1),
        at(middle, lower, size.default, PASSES),
        at(right, lower, size.default, PASSES + 2),
      ],
    },
  };
}

async function seamSheet(
  name: string,
  threads: readonly ThreadChoice[],
  work: (kind: Kind) => Work,
): Promise<Sheet> {
  const block = await readSvgBlock(seams, name, source(name));
  return {
    block,
    dressing: {
      ...plain(name, threads),
      treatments: lines.map(({ kind, middle }) => ({
        seam: referenceTo(nearest(block.map.seams, middle)),
        ...work(kind),
        ends: null,
        side: null,
        reverse: false,
      })),
    },
  };
}

const plain = (file: string, threads: readonly ThreadChoice[]) => ({
  format: 'seamwright-dressing' as const,
  version: DRESSING_VERSION,
  block: source(file),
  ends: 'tuck' as const,
  outline: 'free' as const,
  gap: 0.6,
  threads,
  hoop: null,
  after: null,
  seed: 1,
  byHand: BY_HAND,
});

/** The smallest good size, the usual one, or half as large again. */
function sized(
  { parameters, smallest }: Stitch,
  size: 'small' | 'large' | undefined,
): Record<string, number> {
  if (!size) return {};
  return Object.fromEntries(
    (['repeat', 'width'] as const).map((name) => {
      const { min, max, default: usual } = parameters.find((one) => one.name === name)!;
      return [name, size === 'small' ? Math.max(min, smallest[name]) : Math.min(max, usual * 1.5)];
    }),
  );
}

function withFactor(
  { parameters }: Figure,
  given: Readonly<Record<string, number>>,
  factor: number,
): Record<string, number> {
  return Object.fromEntries(
    parameters
      .filter(({ name, unit }) => unit === 'mm' || Object.hasOwn(given, name))
      .map(({ name, unit, min, max, default: usual }) => {
        const value = given[name] ?? usual;
        return [name, unit === 'mm' ? Math.min(max, Math.max(min, value * factor)) : value];
      }),
  );
}

function nearest(all: readonly Seam[], [x, y]: readonly [number, number]): Seam {
  const away = ({ points }: Seam) => {
    let least = Infinity;
    for (let i = 0; i < points.length; i += 2)
      least = Math.min(least, Math.hypot(points[i] - x, points[i + 1] - y));
    return least;
  };
  // a straight line has points at its ends only
  const middleOf = ({ points }: Seam) => [
    (points[0] + points[points.length - 2]) / 2,
    (points[1] + points[points.length - 1]) / 2,
  ];
  const score = (seam: Seam) => {
    const [mx, my] = middleOf(seam);
    return Math.min(away(seam), Math.hypot(mx - x, my - y));
  };
  return all.reduce((best, seam) => (score(seam) < score(best) ? seam : best));
}
