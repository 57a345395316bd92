import type { Block } from '../block/block.js';
import type { Seam, SeamMap } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import type { Point } from '../geometry/point.js';
import { cumulativeLength, type Points, pointAt, pointCount, polylineLength } from '../geometry/polyline.js';
import { lookHere } from './look-here.js';
import { numberList, rounded, table } from './table.js';

type XY = readonly [number, number];

/** What was found in a block, as the data that programs get. Lengths in mm, points in the block's frame, y down. */
export interface SeamsReport {
  readonly block: { readonly widthMm: number; readonly heightMm: number };
  readonly outline: readonly XY[] | null;
  readonly seams: readonly {
    readonly id: number;
    readonly lengthMm: number;
    readonly closed: boolean;
    readonly corners: readonly XY[];
    readonly points: readonly XY[];
    readonly sides: readonly {
      readonly fromMm: number;
      readonly toMm: number;
      readonly left: number | null;
      readonly right: number | null;
    }[];
  }[];
  readonly junctions: readonly {
    readonly at: XY;
    readonly seams: readonly number[];
    readonly through: number | null;
    readonly onOutline: boolean;
  }[];
  readonly patches: readonly {
    readonly id: number;
    readonly areaMm2: number;
    readonly fabric: string | null;
    readonly boundary: readonly XY[];
    readonly holes: readonly (readonly XY[])[];
  }[];
  readonly findings: readonly Finding[];
}

export function seamsReport({ map, findings }: Block): SeamsReport {
  return {
    block: { widthMm: rounded(map.width, 3), heightMm: rounded(map.height, 3) },
    outline: map.outline && toXY(map.outline.points),
    seams: map.seams.map((seam) => ({
      id: seam.id,
      lengthMm: rounded(polylineLength(seam.points), 3),
      closed: seam.closed,
      corners: cornerPoints(seam),
      points: toXY(seam.points),
      sides: seam.sides.map((side) => ({
        fromMm: rounded(side.from, 3),
        toMm: rounded(side.to, 3),
        left: side.left,
        right: side.right,
      })),
    })),
    junctions: map.junctions.map((junction) => ({
      at: xy(junction.at),
      seams: seamsAt(junction.arms),
      through: junction.through,
      onOutline: junction.onOutline,
    })),
    patches: map.patches.map((patch) => ({
      id: patch.id,
      areaMm2: rounded(patch.area, 2),
      fabric: patch.fabric,
      boundary: toXY(patch.boundary),
      holes: patch.holes.map(toXY),
    })),
    findings,
  };
}

/** The same for a person: a table of seams, then what is worth a look. */
export function seamsText({ name, map, findings }: Block): string {
  const junctions = map.junctions.filter((junction) => !junction.onOutline).length;
  const size = `${rounded(map.width, 1)} x ${rounded(map.height, 1)} mm`;
  const count = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;
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
    `${name}: ${size}, ${count(map.seams.length, 'seam', 'seams')}, ${count(junctions, 'junction', 'junctions')} inside, ${count(map.patches.length, 'patch', 'patches')}${map.outline ? '' : ', no outline'}`,
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
    lookHere(findings),
  ].join('\n');
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

const xy = ([x, y]: Point): XY => [rounded(x, 3), rounded(y, 3)];
const toXY = (line: Points): XY[] => Array.from({ length: pointCount(line) }, (_, i) => xy(pointAt(line, i)));

function cornerPoints(seam: Seam): XY[] {
  const lengths = cumulativeLength(seam.points);
  return seam.corners.map((corner) => {
    let nearest = 0;
    for (let i = 1; i < lengths.length; i++) {
      if (Math.abs(lengths[i] - corner.u) < Math.abs(lengths[nearest] - corner.u)) nearest = i;
    }
    return xy(pointAt(seam.points, nearest));
  });
}
