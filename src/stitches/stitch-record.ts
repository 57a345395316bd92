import type { Parameter, Stitch } from './stitch.js';

/**
 * A stitch file as it stands: JSON that a maker can edit. Lengths are mm in the unit's own frame (u along the line,
 * v across, positive to the left hand); angles in degrees.
 */
export interface StitchRecord {
  readonly format: 1;
  readonly title: string;
  readonly otherNames: readonly string[];
  readonly family: string;
  readonly for: string;
  /** where its shape was learned: author, title, year, figure */
  readonly sources: readonly string[];
  /** at least `repeat` and `width` */
  readonly parameters: Readonly<Record<string, Omit<Parameter, 'name'>>>;
  /** quantities worked out once and used by name further down; each may use those before it */
  readonly measures?: Readonly<Record<string, Arithmetic>>;
  readonly symmetry: Stitch['symmetry'];
  readonly halves: boolean;
  readonly corner: Stitch['corner'];
  readonly growth: Stitch['growth'];
  readonly smallest: Stitch['smallest'];
  readonly points: Readonly<Record<string, PlaceRecord>>;
  /** in the order a hand works them */
  readonly legs: readonly LegRecord[];
  /** point of this unit: the point of the next unit that is the same hole */
  readonly joins: Readonly<Record<string, string>>;
  /** names of legs drawn once more where a row ends */
  readonly closing?: readonly string[];
  /** where an accent can sit: a point, or a place of its own */
  readonly seats?: Readonly<Record<string, string | PlaceRecord>>;
}

/**
 * A number, or arithmetic on the parameters, the measures before it, `length` (the unit's own length: the repeat, half
 * of it in a glide) and `pi`.
 */
export type Arithmetic = number | string;
/** [u, v] */
export type PlaceRecord = readonly [Arithmetic, Arithmetic];

interface Common {
  readonly name: string;
  /** share of the row's weight in thread; 1 when not given, 0 on an under-leg */
  readonly share?: number;
  /** the point in whose frame the leg is laid stiffly, as a flower is; without it the leg bends with the line */
  readonly keepsShapeAt?: string;
  /** worked only where a row ends, as if another unit began there, after the closing legs */
  readonly onlyAtEnd?: boolean;
}
interface FromTo extends Common {
  readonly from: string;
  readonly to: string;
}
export interface StraightRecord extends FromTo {
  readonly kind: 'straight';
}
/** One control point makes a quadratic curve, two a cubic one. */
export interface CurveRecord extends FromTo {
  readonly kind: 'curve';
  readonly via: readonly string[];
}
/** Thread out at the base, round by the tip, and back. `width` is across its belly. */
export interface LoopRecord extends Common {
  readonly kind: 'loop';
  readonly base: string;
  readonly tip: string;
  readonly width: Arithmetic;
}
export interface KnotRecord extends Common {
  readonly kind: 'knot';
  readonly at: string;
  /** diameter */
  readonly size: Arithmetic;
}
export interface PetalRecord extends Common {
  readonly kind: 'petal';
  readonly base: string;
  readonly tip: string;
  readonly width: Arithmetic;
}
export interface CordRecord extends FromTo {
  readonly kind: 'cord';
  readonly via?: readonly string[];
  readonly width: Arithmetic;
}
/**
 * What the hand does behind the cloth. So that it hides under visible thread when a machine sews it, it is led through
 * the points `via`, or lies all the way `beneath` the named leg, which has the same two ends.
 */
export interface UnderRecord extends FromTo {
  readonly kind: 'under';
  readonly via?: readonly string[];
  readonly beneath?: string;
}
export type LegRecord =
  | StraightRecord
  | CurveRecord
  | LoopRecord
  | KnotRecord
  | PetalRecord
  | CordRecord
  | UnderRecord;
