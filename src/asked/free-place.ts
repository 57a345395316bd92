import type { Patch, SeamMap } from '../block/seam-map.js';
import {
  type Clearance,
  clearOfArea,
  clearOfLines,
  type Lines,
  largestClearCircle,
} from '../fit/clear-circle.js';
import { alongCloth, centeredAt, type Extent, extentOf, onCloth } from '../fit/figure-extent.js';
import type { Spot } from '../fit/place-ornament.js';
import type { SizedOrnament } from '../fit/sized-ornament.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { type Area, insideRings } from '../geometry/area.js';
import { type Box, boxesMeet, boxOf } from '../geometry/box.js';
import { roundDisc } from '../geometry/disc.js';
import type { Circle } from '../geometry/enclosing-circle.js';
import { longWay } from '../geometry/long-way.js';
import type { Point } from '../geometry/point.js';
import type { Points } from '../geometry/polyline.js';

/** Clear cloth round an ornament, to seams, thread and other ornaments, mm. Common practice. */
export const ORNAMENT_CLEAR = 1.5;
/** Share of its room an ornament gives up to stand nearer to the middle of its patch. */
const FOR_MIDDLE = 0.04;
/** Sizes tried between the one asked for and the least: halvings, to a thousandth. */
const HALVINGS = 10;

/** What lies on a block when ornaments are placed. */
export interface Ground {
  readonly map: SeamMap;
  /** thread of the treatments as sewn */
  readonly thread: readonly Lines[];
  /** what is laid along a line by hand, and how wide */
  readonly laid: readonly { readonly line: Lines; readonly width: number }[];
  /** what is put on by hand */
  readonly marks: readonly { readonly at: Point; readonly radius: number }[];
  readonly keepClear: readonly KeptArea[];
}

/** Answers where there is room; what is put down takes it from all who ask later. */
export interface FreePlaces {
  /** the largest circle of bare cloth in a patch, already clear all round by ORNAMENT_CLEAR */
  circleIn(patch: Patch): Circle | null;
  /** a figure that lies here takes this room, a closed convex polygon */
  take(hull: Points): void;
}

/** What is taken, and the box round it. */
interface Taken {
  readonly box: Box;
  readonly clear: Clearance;
}

export function freePlaces({ thread, laid, marks, keepClear }: Ground): FreePlaces {
  const clearOfThread = clearOfLines(thread, ORNAMENT_CLEAR);
  const taken: Taken[] = [
    ...laid.map(({ line, width }) => ({
      box: grownBox(boxOf([line.xy]), width / 2),
      clear: clearOfLines([line], ORNAMENT_CLEAR + width / 2),
    })),
    ...keepClear.map(({ area }) => takenArea(area)),
    ...marks.map(({ at, radius }) => takenArea({ rings: [roundDisc(at, radius)], rule: 'nonzero' })),
  ];
  return {
    circleIn: (patch) => {
      // what lies outside of a patch is further away than its border, which is kept clear of by as much
      const own = boxOf([patch.boundary]);
      const near = taken.filter(({ box }) => boxesMeet(box, own)).map(({ clear }) => clear);
      return largestClearCircle(patch, [clearOfThread, ...near], {
        margin: ORNAMENT_CLEAR,
        forMiddle: FOR_MIDDLE,
      });
    },
    take: (hull) => void taken.push(takenArea({ rings: [hull], rule: 'nonzero' })),
  };
}

const grownBox = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

const takenArea = (area: Area): Taken => ({
  box: boxOf(area.rings),
  clear: clearOfArea(area, ORNAMENT_CLEAR),
});

/** The patch that is named by number or by a place in it; null where there is none. */
export function patchNamed({ patches }: SeamMap, named: number | { readonly at: Point }): Patch | null {
  if (typeof named === 'number') return patches[named - 1] ?? null;
  return patches.find(({ boundary, holes }) => insideRings(named.at, [boundary, ...holes])) ?? null;
}

/** A figure as it stands in a free place. */
export interface Standing {
  readonly spot: Spot;
  readonly scale: number;
  readonly extent: Extent;
}

/**
 * A figure in the middle of a circle, as large as it was asked for or as large as fits, or null when it does not fit at
 * its least good size.
 *
 * @param theta its turn, or null to lie along the patch
 */
export function standIn(
  circle: Circle,
  patch: Patch,
  figure: SizedOrnament,
  passes: number,
  theta: number | null,
): Standing | null {
  const extentAt = (scale: number) => extentOf(figure.build(scale), passes);
  const fits = ({ circle: own }: Extent) => own.radius <= circle.radius;
  let [scale, extent] = [1, extentAt(1)];
  if (!fits(extent)) {
    [scale, extent] = [figure.least, extentAt(figure.least)];
    if (!fits(extent)) return null;
    let above = 1;
    for (let i = 0; i < HALVINGS; i++) {
      const between = (scale + above) / 2;
      const tried = extentAt(between);
      if (fits(tried)) [scale, extent] = [between, tried];
      else above = between;
    }
  }
  const turned = theta ?? alongCloth(extent, longWay([patch.boundary, ...patch.holes]));
  return { spot: centeredAt(extent, circle.x, circle.y, turned), scale, extent };
}

/** The hull of a standing figure, on the cloth. */
export const hullOf = ({ extent, spot }: Standing): Points => onCloth(extent.hull, spot);
