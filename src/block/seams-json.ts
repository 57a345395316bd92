import type { Finding } from '../finding.js';
import type { Point } from '../geometry/point.js';
import { cumulativeLength, type Points, polylineLength, toPoints } from '../geometry/polyline.js';
import { pointAtLength } from '../geometry/polyline-part.js';
import type { Block } from './block.js';

type Pair = [x: number, y: number];

/** What was found in a block, as programs read it: lengths in mm, points [x, y] in the block's frame, y down. */
export interface SeamsJson {
  readonly block: { readonly widthMm: number; readonly heightMm: number };
  /** closed: the first point is repeated at the end */
  readonly outline: Pair[] | null;
  readonly seams: {
    readonly id: number;
    readonly lengthMm: number;
    readonly closed: boolean;
    readonly corners: Pair[];
    readonly points: Pair[];
    readonly sides: {
      readonly fromMm: number;
      readonly toMm: number;
      readonly left: number | null;
      readonly right: number | null;
    }[];
  }[];
  readonly junctions: {
    readonly at: Pair;
    readonly seams: number[];
    readonly through: number | null;
    readonly onOutline: boolean;
  }[];
  readonly patches: {
    readonly id: number;
    readonly areaMm2: number;
    readonly fabric: string | null;
    readonly boundary: Pair[];
    readonly holes: Pair[][];
  }[];
  /** areas of the drawing that stay clear; each is what its closed lines enclose */
  readonly keepClear: readonly { readonly name: string; readonly boundaries: Pair[][] }[];
  readonly findings: readonly Finding[];
}

/** Decimals of a written number: a tenth of a micrometer. */
const PLACES = 1e4;
const round = (value: number): number => Math.round(value * PLACES) / PLACES + 0;
const pair = ([x, y]: Point): Pair => [round(x), round(y)];
const pairs = (line: Points): Pair[] => toPoints(line).map(pair);

/** The record of a block's seams, rounded to 0.1 micrometer. */
export function seamsJson({
  map,
  keepClear = [],
  findings,
}: Pick<Block, 'map' | 'keepClear' | 'findings'>): SeamsJson {
  return {
    block: { widthMm: round(map.width), heightMm: round(map.height) },
    outline: map.outline && pairs(map.outline.points),
    seams: map.seams.map(({ id, closed, points, corners, sides }) => {
      const at = cumulativeLength(points);
      return {
        id,
        lengthMm: round(polylineLength(points)),
        closed,
        corners: corners.map(({ u }) => pair(pointAtLength(points, at, u))),
        points: pairs(points),
        sides: sides.map(({ from, to, left, right }) => ({
          fromMm: round(from),
          toMm: round(to),
          left,
          right,
        })),
      };
    }),
    junctions: map.junctions.map(({ at, arms, through, onOutline }) => ({
      at: pair(at),
      seams: [...new Set(arms.map(({ seam }) => seam).filter((seam) => seam !== 'outline'))].sort(
        (a, b) => a - b,
      ),
      through,
      onOutline,
    })),
    patches: map.patches.map(({ id, area, fabric, boundary, holes }) => ({
      id,
      areaMm2: round(area),
      fabric,
      boundary: pairs(boundary),
      holes: holes.map(pairs),
    })),
    keepClear: keepClear.map(({ name, area }) => ({ name, boundaries: area.rings.map(pairs) })),
    findings,
  };
}
