import type { Block } from '../block/block.js';
import type { Seam, SeamMap } from '../block/seam-map.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { boxOf } from '../geometry/box.js';
import { polylineLength } from '../geometry/polyline.js';
import { lookHere, type Paint } from './look-here.js';
import { counted, numberList, rounded, table } from './table.js';

/** What was found in a block, for a person: a table of seams, then what is worth a look. */
export function seamsText({ name, map, keepClear = [], findings }: Block, paint?: Paint): string {
  const junctions = map.junctions.filter((junction) => !junction.onOutline).length;
  const size = `${rounded(map.width, 1)} x ${rounded(map.height, 1)} mm`;
  const rows = map.seams.map((seam) => [
    String(seam.id),
    polylineLength(seam.points).toFixed(1),
    String(seam.corners.length),
    seam.closed ? 'ring' : endWords(map, seam, 0),
    seam.closed ? '' : endWords(map, seam, 1),
    [...new Set(seam.sides.flatMap((side) => [side.left, side.right]))]
      .filter((id) => id !== null)
      .sort((a, b) => a - b)
      .join(', '),
  ]);
  return [
    `${name}: ${size}, ${counted(map.seams.length, 'seam')}, ${counted(junctions, 'junction')} inside, ${counted(map.patches.length, 'patch', 'es')}${map.outline ? '' : ', no outline'}`,
    '',
    table(
      [
        { heading: 'Seam', figures: true },
        { heading: 'Length mm', figures: true },
        { heading: 'Corners', figures: true },
        { heading: 'Starts' },
        { heading: 'Ends' },
        { heading: 'Between patches' },
      ],
      rows,
    ),
    '',
    ...(keepClear.length > 0 ? [keptTable(keepClear), ''] : []),
    lookHere(findings, paint),
  ].join('\n');
}

function keptTable(keepClear: readonly KeptArea[]): string {
  return table(
    [
      { heading: 'Kept clear' },
      ...['Left mm', 'Top mm', 'Width mm', 'Height mm'].map((heading) => ({ heading, figures: true })),
    ],
    keepClear.map(({ name, area }) => {
      const { left, top, right, bottom } = boxOf(area.rings);
      return [name, ...[left, top, right - left, bottom - top].map((mm) => mm.toFixed(1))];
    }),
  );
}

function endWords(map: SeamMap, seam: Seam, which: 0 | 1): string {
  const end = seam.ends?.[which];
  if (!end || end.kind === 'free') return 'free';
  if (end.kind === 'outline') return 'on the outline';
  const junction = map.junctions[end.junction];
  if (junction.through !== null && junction.through !== seam.id) return `butts into ${junction.through}`;
  return `meets ${numberList(seamsAt(junction.arms).filter((id) => id !== seam.id))}`;
}

const seamsAt = (arms: readonly { readonly seam: number | 'outline' }[]): number[] =>
  [...new Set(arms.map((arm) => arm.seam))].filter((id) => id !== 'outline').sort((a, b) => a - b);
