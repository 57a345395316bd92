import type { Fabric } from '../color/fabric.js';
import type { Corner } from '../geometry/guide-line.js';
import type { Point } from '../geometry/point.js';
import type { Points } from '../geometry/polyline.js';

/** The network of a block: seams, junctions, patches, outline. Plain records; millimeters in the block's frame. */
export interface SeamMap {
  /** size of the block's frame, whose corner is (0, 0) */
  readonly width: number;
  readonly height: number;
  /** outer boundary of the patches, closed, clockwise as drawn; null when the lines close nothing */
  readonly outline: Outline | null;
  /** ascending by id, 1 to n */
  readonly seams: readonly Seam[];
  readonly junctions: readonly Junction[];
  readonly patches: readonly Patch[];
}

export interface Outline {
  readonly points: Points;
  readonly corners: readonly Corner[];
}

/** A line where patches meet, followed straight through the junctions it passes. */
export interface Seam {
  readonly id: number;
  readonly closed: boolean;
  /** dense polyline from start to end; closed seams repeat the first point and run clockwise from their topmost */
  readonly points: Points;
  /** u of each corner along `points`, ascending */
  readonly corners: readonly Corner[];
  /** what is at the start and at the end; null on a ring */
  readonly ends: readonly [SeamEnd, SeamEnd] | null;
  /** junctions inside the seam, ascending by u; on a ring those at u = 0 stand here too */
  readonly crossings: readonly SeamCrossing[];
  /** which patch lies to each hand, ascending, covering 0 to the length */
  readonly sides: readonly SeamSide[];
}

export interface SeamEnd {
  readonly kind: 'free' | 'outline' | 'junction';
  /** index into junctions, -1 at a free end that touches nothing */
  readonly junction: number;
}

export interface SeamCrossing {
  readonly u: number;
  readonly junction: number;
}

export interface SeamSide {
  readonly from: number;
  readonly to: number;
  readonly left: number | null;
  readonly right: number | null;
}

/** A point where seams meet each other or the outline. */
export interface Junction {
  readonly at: Point;
  /** all arms that leave the point, by rising direction angle */
  readonly arms: readonly Arm[];
  /** the seam that runs through, if one does; null where none does or where the outline is the through line */
  readonly through: number | null;
  readonly onOutline: boolean;
}

/** One line leaving a junction. */
export interface Arm {
  readonly seam: number | 'outline';
  /** where on that seam (or outline) the junction is */
  readonly u: number;
  /** +1 when walking away from the junction raises u, -1 when it lowers it */
  readonly sense: 1 | -1;
  /** direction of the chord to the point ARM_CHORD along the arm, radians, y down */
  readonly direction: number;
}

export interface Patch {
  readonly id: number;
  readonly area: number;
  /** '#rrggbb', of a print its main color; null when neither drawing nor dressing gives one */
  readonly fabric: string | null;
  /** all of its colors and how busy they are, where it is more than one plain color */
  readonly print?: Fabric;
  /** closed, clockwise as drawn */
  readonly boundary: Points;
  readonly holes: readonly Points[];
}
