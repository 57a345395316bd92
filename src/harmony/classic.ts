import { meetingsAmong } from '../block/meetings.js';
import type { Seam, SeamMap } from '../block/seam-map.js';
import { polylineLength } from '../geometry/polyline.js';
import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import type { Stitch } from '../stitches/stitch.js';
import { puzzleOf } from './puzzle.js';
import { chooseInTurn } from './saturation.js';

/** Stitches chosen from when none is named: wide ones that every worker of crazy patchwork knows. Common practice. */
const CLASSIC = [
  'blanket',
  'chevron',
  'cretan',
  'double-feather',
  'feather',
  'fly',
  'herringbone',
  'lazy-daisy',
];

/**
 * The stitches of this kind that can be worked at the sizes asked for; of a library without them, all that can.
 * @throws InputError when none can
 */
export function classicStitches(
  { stitches }: Pick<Dictionary, 'stitches'>,
  { repeat, width }: { readonly repeat?: number; readonly width?: number },
): Stitch[] {
  const takes = (stitch: Stitch, name: string, size: number | undefined) => {
    const { min, max } = stitch.parameters.find((parameter) => parameter.name === name)!;
    return size === undefined || (size >= min && size <= max);
  };
  const classic = CLASSIC.flatMap((name) => stitches.get(name) ?? []);
  const fitting = (classic.length ? classic : [...stitches.values()]).filter(
    (stitch) => takes(stitch, 'repeat', repeat) && takes(stitch, 'width', width),
  );
  if (fitting.length > 0) return fitting;
  const asked = [repeat !== undefined && `--repeat ${repeat}`, width !== undefined && `--width ${width}`];
  throw new InputError(
    'no-stitch-of-size',
    asked.filter(Boolean).join(' '),
    'no stitch can be worked at this size',
    'choose one with --stitch; seamwright stitches tells their sizes',
  );
}

/**
 * A stitch for each seam, that no seam it meets has: of those the one used least so far, of those the widest. Longer seams
 * choose first where nothing else decides.
 * @param edge a stitch that the outline has
 * @param scale how many times as large the block is to be
 */
export function stitchesInTurn(
  map: SeamMap,
  seams: readonly Seam[],
  stitches: readonly Stitch[],
  edge: Stitch | undefined,
  scale = 1,
): Map<number, string> {
  const size = (stitch: Stitch, wanted: string) =>
    stitch.parameters.find(({ name }) => name === wanted)!.default;
  const widest = [...stitches].sort(
    (a, b) => size(b, 'width') - size(a, 'width') || (a.name < b.name ? -1 : 1),
  );
  const offered = edge && !widest.includes(edge) ? [...widest, edge] : widest;
  const long = seams
    .map(({ id, points }) => ({ id, length: scale * polylineLength(points) }))
    .sort((a, b) => b.length - a.length || a.id - b.id);
  const offers = long.map(({ length }) => {
    const fits = widest.flatMap((stitch, k) => (length >= 3 * size(stitch, 'repeat') ? [k] : []));
    return fits.length > 0 ? fits : widest.map((_, k) => k);
  });
  const lines = [...long.map(({ id }) => id), ...(edge ? ['outline' as const] : [])];
  const settled = lines.map((line) => (line === 'outline' ? offered.indexOf(edge!) : -1));
  const used = new Int32Array(offered.length);
  const chosen = chooseInTurn(
    puzzleOf({
      neighbors: meetingsAmong(map, lines),
      offers: edge ? [...offers, [settled[long.length]]] : offers,
      marks: offered.map((_, k) => [k]),
    }),
    settled,
    {
      cost: (_seam, stitch) => used[stitch],
      count: (_seam, stitch, by) => {
        used[stitch] += by;
      },
    },
  );
  return new Map(long.map(({ id }, i) => [id, offered[chosen[i]].name]));
}
