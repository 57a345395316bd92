import { accentNames } from '../../asked/layers.js';
import type { SeamMap } from '../../block/seam-map.js';
import type { Dressed, DressedLine } from '../../dress.js';
import type { Chain, Mark } from '../../fit/fit.js';
import type { Dressing } from '../../formats/dressing.js';
import { boxOf } from '../../geometry/box.js';
import { clipLine } from '../../geometry/clip-line.js';
import { lineIndex } from '../../geometry/line-index.js';
import type { Points } from '../../geometry/polyline.js';
import { InputError } from '../../input-error.js';
import type { Dictionary } from '../../stitches/dictionary.js';
import { distinctPoints } from './distinct-points.js';
import { entriesOf, placeName } from './entries.js';
import { labelBox } from './label-room.js';
import { labelsOf, type NamedFigure, type NamedLine } from './labels.js';
import { edgesBeside, legMarks, ringAbout } from './leg-marks.js';
import type { Pattern, PatternLine } from './pattern.js';

export interface PatternOptions {
  /** only these lines of the block, without ornaments; all and the ornaments when not given */
  readonly lines?: readonly (number | 'outline')[];
}

/** Blank paper round all that is drawn, mm. */
const MARGIN = 3;
/** A line to work on that keeps nearer to its seam than this is followed by the seam, mm. */
const APART = 1.5;

/**
 * What a needlewoman marks on the cloth to work a dressed block by hand, from its fit: lines to follow, needle points, legs,
 * and what is put on by hand. Not mirrored.
 *
 * @throws InputError when a line is asked for that has no treatment, or nothing is worked at all
 */
export function patternOf(
  dressed: Dressed,
  dictionary: Dictionary,
  { lines: asked }: PatternOptions = {},
): Pattern {
  const lines = linesAsked(dressed, asked);
  const ornaments = asked ? [] : dressed.ornaments;
  const worked = [
    ...lines.flatMap(({ fit }) =>
      fit.layers.flatMap(({ kind, chains }) => (kind === 'placement' ? [] : chains)),
    ),
    ...ornaments.map(({ chain }) => chain),
  ];
  const { lines: legs, points, knots } = legMarks(worked);
  const dots = distinctPoints(points, knots);
  const drawn: PatternLine[] = [
    ...ofKind(
      'guide',
      lines.flatMap((line) => guidesApart(dressed, line)),
    ),
    ...ofKind(
      'ribbon',
      lines.flatMap((line) => ribbonEdges(dressed, line)),
    ),
    ...ofKind('stitch', legs),
    ...ofKind(
      'byHand',
      lines.flatMap(({ fit }) => fit.marks.flatMap(thingByHand)),
    ),
  ];
  if (drawn.length === 0) {
    throw new InputError(
      'nothing-to-mark',
      asked ? '--seam' : dressed.block.name,
      'nothing is worked there that could be marked',
      'give a dressing with treatments that fit',
    );
  }
  const seams = ofKind('seam', seamLines(dressed, asked, drawn));
  const labels = labelsOf(
    [...seams, ...drawn],
    lines.map((line) => namedLine(dressed, dictionary, line)),
    namedFigures(ornaments, dressed.dressing, dictionary),
  );
  const { left, top, right, bottom } = boxOf([
    ...[...seams, ...drawn].map((line) => line.points),
    ...labels.map((label) => {
      const box = labelBox(label);
      return Float64Array.of(box.left, box.top, box.right, box.bottom);
    }),
  ]);
  return {
    name: dressed.block.name,
    frame: { left: left - MARGIN, top: top - MARGIN, right: right + MARGIN, bottom: bottom + MARGIN },
    lines: [...seams, ...drawn],
    dots,
    labels,
    entries: entriesOf(dressed, lines, ornaments, dictionary),
    mirrored: false,
  };
}

const ofKind = (kind: PatternLine['kind'], lines: readonly Points[]): PatternLine[] =>
  lines.map((points) => ({ kind, points }));

function linesAsked({ lines }: Dressed, asked: PatternOptions['lines']): readonly DressedLine[] {
  if (!asked) return lines;
  const missing = asked.find((id) => lines.every(({ fit }) => fit.seam !== id));
  if (missing !== undefined) {
    throw new InputError(
      'seam-not-dressed',
      `--seam ${placeName(missing)}`,
      'has no treatment',
      lines.length
        ? `choose among ${lines.map(({ fit }) => placeName(fit.seam)).join(', ')}`
        : 'dress some seam first',
    );
  }
  return lines.filter(({ fit }) => asked.includes(fit.seam));
}

/** Every seam and the outline; where only some lines are asked for, what of them lies in the frame of these. */
function seamLines(
  { block: { map } }: Dressed,
  asked: PatternOptions['lines'],
  drawn: readonly PatternLine[],
): Points[] {
  const all = [...map.seams.map(({ points }) => points), ...(map.outline ? [map.outline.points] : [])];
  if (!asked) return all;
  const own = all.filter((_, i) => asked.includes(map.seams[i]?.id ?? 'outline'));
  const { left, top, right, bottom } = boxOf([...drawn.map(({ points }) => points), ...own]);
  return all.flatMap((line) => clipLine(line, { left, top, right, bottom }));
}

/** Lines to work on that are seen beside the seam: one that lies on it, or all but, would only blur it. */
function guidesApart({ block: { map } }: Dressed, { fit }: DressedLine): Points[] {
  if (fit.guides.length === 0) return [];
  const points = pointsOf(map, fit.seam);
  const seam = lineIndex([{ xy: points, start: Int32Array.of(0, points.length / 2) }]);
  return fit.guides.filter((guide) =>
    guide.some((x, i) => i % 2 === 0 && seam.distance(x, guide[i + 1], APART) === Number.POSITIVE_INFINITY),
  );
}

const pointsOf = (map: SeamMap, line: number | 'outline'): Points =>
  line === 'outline' ? map.outline!.points : map.seams[line - 1].points;

/** Ribbon and the like lies along its placement line. */
function ribbonEdges({ dressing }: Dressed, { fit, treatment }: DressedLine): Points[] {
  const width = dressing.treatments[treatment].laid?.width ?? 0;
  return fit.layers
    .flatMap(({ kind, chains }) => (kind === 'placement' ? chains : []))
    .flatMap((chain) => edgesBeside(alongNodes(chain), width / 2));
}

const alongNodes = ({ nodes, closed }: Chain): Points =>
  closed ? Float64Array.of(...nodes, nodes[0], nodes[1]) : nodes;

/** A ring, and a small one for the hole that the thread goes through. */
const thingByHand = ({ at, radius }: Mark): Points[] => [
  ringAbout([at[0], at[1]], radius),
  ringAbout([at[0], at[1]], Math.max(0.25, radius * 0.2)),
];

function namedLine(
  { block: { map }, dressing }: Dressed,
  dictionary: Dictionary,
  { fit, treatment }: DressedLine,
): NamedLine {
  const asked = dressing.treatments[treatment];
  const titles = new Set(asked.rows.map(({ stitch }) => dictionary.stitches.get(stitch)!.title));
  const names = accentNames(asked, dictionary);
  return {
    text: `${placeName(fit.seam)} ${[...titles].join(', ')}`,
    along: pointsOf(map, fit.seam),
    things: fit.marks.map(({ at, radius, index }) => ({ text: names[index], at: [at[0], at[1]], radius })),
  };
}

/** The threads of a figure are named together. */
function namedFigures(
  ornaments: Dressed['ornaments'],
  dressing: Dressing,
  dictionary: Dictionary,
): NamedFigure[] {
  const byFigure = new Map<number, Chain[]>();
  for (const { ornament, chain } of ornaments)
    byFigure.set(ornament, [...(byFigure.get(ornament) ?? []), chain]);
  return [...byFigure].map(([ornament, chains]) => ({
    text: dictionary.ornaments.get(dressing.ornaments![ornament].ornament)!.title,
    lines: legMarks(chains).lines,
  }));
}
