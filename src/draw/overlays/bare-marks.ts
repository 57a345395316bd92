import type { SeamMap } from '../../block/seam-map.js';
import { lineName } from '../../finding.js';
import { boxAt } from '../../geometry/box.js';
import type { Point } from '../../geometry/point.js';
import { cumulativeLength, lastPoint, type Points, pointAt } from '../../geometry/polyline.js';
import { partOf, pointAtLength } from '../../geometry/polyline-part.js';
import { INCH, type LengthUnit } from '../../geometry/units.js';
import { darkPlate, darkPlateSize } from '../number-plates.js';
import { traceLine } from '../pen.js';
import { type Attributes, element, short, title } from '../svg.js';
import { pathData } from '../svg-pen.js';
import type { Overlay } from './overlay.js';
import type { BareStretch } from './shown-work.js';

const MARK = { stroke: '#d55e00', 'stroke-width': 0.9, 'stroke-dasharray': '0.9 0.5' };
/** Length of the bars at both ends of a stretch, mm, and how far its number stands aside. */
const BAR = 3;
const ASIDE = 4.5;

/** What stays bare of dressed seams when all is sewn, as the bare-seam check found it; lengths are told in `as`. */
export function bareOverlay(
  map: SeamMap,
  bare: readonly BareStretch[],
  size: number,
  as: LengthUnit,
): Overlay {
  const heading =
    bare.length === 0
      ? 'Bare seam: none found'
      : `Bare seam: ${bare.length === 1 ? 'one stretch' : `${bare.length} stretches`} when all is sewn`;
  const line = (x: number, y: number, look: Attributes) =>
    element('path', { ...look, fill: 'none', d: `M${short(x - 3.5)} ${short(y)}h7` });
  const entry = {
    sample: (x: number, y: number) => line(x, y, MARK),
    told: `further from thread than the treatment reaches; the number is its length, ${as}`,
  };
  const marks = bare.map((stretch) => markOf(map, stretch, as));
  return {
    picture: marks.map((mark) => bareMark(mark, size)).join(''),
    taken: marks.map(({ at, length }) => {
      const { width, height } = darkPlateSize(length, size);
      return boxAt(at, width, height);
    }),
    part: { heading, entries: bare.length ? [entry] : [] },
  };
}

interface Mark {
  readonly seam: BareStretch['seam'];
  readonly part: Points;
  /** as it is written */
  readonly length: string;
  readonly unit: LengthUnit;
  /** where that stands */
  readonly at: Point;
}

function markOf(map: SeamMap, { seam, from, to }: BareStretch, unit: LengthUnit): Mark {
  const line = seam === 'outline' ? map.outline!.points : map.seams[seam - 1].points;
  const along = cumulativeLength(line);
  const part = partOf(line, along, from, to);
  const [x, y] = pointAtLength(line, along, (from + to) / 2);
  const [, [nx, ny]] = endsOf(part)[0];
  const length = unit === 'mm' ? (to - from).toFixed(1) : ((to - from) / INCH).toFixed(2);
  return { seam, part, length, unit, at: [x + ASIDE * nx, y + ASIDE * ny] };
}

/** A bare stretch as a broad dashed line along the seam between two bars, with its length beside it. */
function bareMark({ seam, part, length, unit, at }: Mark, size: number): string {
  const d = pathData((pen) => {
    traceLine(pen, part);
    for (const [[x, y], [nx, ny]] of endsOf(part)) {
      pen.move(x - (BAR / 2) * nx, y - (BAR / 2) * ny);
      pen.line(x + (BAR / 2) * nx, y + (BAR / 2) * ny);
    }
  });
  return element(
    'g',
    { fill: 'none', 'stroke-linecap': 'butt', 'stroke-linejoin': 'round' },
    title(`${lineName(seam)}, ${length} ${unit} bare`),
    element('path', { d, stroke: '#ffffff', 'stroke-width': 1.5 }),
    element('path', { d, ...MARK }),
    darkPlate(length, at, size),
  );
}

/** Both ends of a line and which way is across it there. */
function endsOf(line: Points): [at: readonly [number, number], across: readonly [number, number]][] {
  const last = lastPoint(line);
  const across = ([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]) => {
    const long = Math.hypot(bx - ax, by - ay) || 1;
    return [(by - ay) / long, (ax - bx) / long] as const;
  };
  return [
    [pointAt(line, 0), across(pointAt(line, 0), pointAt(line, 1))],
    [last, across(pointAt(line, line.length / 2 - 2), last)],
  ];
}
