import type { Arm, Junction } from '../block/seam-map.js';
import { wrapAngle } from '../geometry/point.js';

/**
 * How far from a junction a treatment ends. All lengths mm, measured along the arm's line from the junction point.
 */

/** Thread 0.4 plus 0.2 clear, measured between needle points: the default gap between two bands. */
export const DEFAULT_GAP = 0.6;

/** Raised figures keep this far from the thread that will lie over a tucked end, mm: 1 mm clear and a thread's width. */
export const OFF_COVER = 1.4;

/** Reach of an arm's treatment to its left and right as seen walking away from the junction; 0 when it is bare. */
export type ArmReach = (arm: Arm) => { readonly left: number; readonly right: number };

/**
 * Distance at which a band of reach `a`, meeting a through band of reach `t` at the angle theta, ends a gap clear of
 * it: the nearer front corner of the band is then exactly the gap away. Exact for straight arms.
 */
export function clearOfThrough(t: number, gap: number, a: number, theta: number): number {
  return (t + gap + a * Math.abs(Math.cos(theta))) / Math.sin(theta);
}

/**
 * Distance at which a band of reach `a` facing a wedge of angle phi keeps half a gap from the wedge's bisector. The
 * neighbor does the same, so the two bands are a gap apart.
 */
export function clearOfWedge(a: number, gap: number, phi: number): number {
  return (a * Math.cos(phi / 2) + gap / 2) / Math.sin(phi / 2);
}

/** Where an arm that does not run through meets a line that does. */
export interface Meeting {
  /** angle to the nearer arm of the through line, 0 to a right angle */
  readonly theta: number;
  /** reach of the through treatment on this arm's side */
  readonly throughReach: number;
  /** this arm's reach to the side of the nearer through arm */
  readonly facing: number;
  /** the two through arms, the nearer one first */
  readonly arms: readonly [Arm, Arm];
}

/** How `arm` meets the through line of its junction; null when no line runs through. */
export function meeting(
  junction: Junction,
  arm: Arm,
  through: number | 'outline',
  reach: ArmReach,
): Meeting | null {
  const arms = junction.arms.filter((other) => other.seam === through && other !== arm);
  if (arms.length === 0) return null;
  const nearer = arms.reduce((a, b) => (turnTo(arm, b) <= turnTo(arm, a) ? b : a));
  const other = arms.find((candidate) => candidate !== nearer) ?? nearer;
  const isClockwise = wrapAngle(nearer.direction - arm.direction) > 0;
  const mine = reach(arm);
  const its = reach(nearer);
  return {
    theta: Math.min(Math.PI / 2, turnTo(arm, nearer)),
    // Seen from the nearer through arm, this arm lies to the left when it had to be turned clockwise to reach it.
    throughReach: isClockwise ? its.left : its.right,
    facing: isClockwise ? mine.right : mine.left,
    arms: [nearer, other],
  };
}

/** A wedge of cloth between this arm and the next one, neither of which runs through. */
export interface Wedge {
  /** angle between the arms, under half a turn */
  readonly phi: number;
  /** to the right hand of someone walking away from the junction */
  readonly right: boolean;
  /** this arm's reach into the wedge */
  readonly facing: number;
  /** the neighbor's */
  readonly other: number;
}

/** The wedges this arm shares with dressed neighbors where neither runs through. */
export function wedgesOf(
  junction: Junction,
  arm: Arm,
  through: number | 'outline' | null,
  reach: ArmReach,
): Wedge[] {
  if (arm.seam === through) return [];
  const mine = reach(arm);
  return neighbors(junction, arm)
    .filter(({ arm: other, phi }) => {
      if (other.seam === through || other.seam === 'outline' || phi >= Math.PI) return false;
      const its = reach(other);
      return its.left > 0 || its.right > 0;
    })
    .map(({ arm: neighbor, phi, right }) => {
      const its = reach(neighbor);
      const [facing, other] = right ? [mine.right, its.left] : [mine.left, its.right];
      return { phi, right, facing, other };
    });
}

/** The largest demand of the wedges on an arm that ends short, at least 0. */
export function wedgeDemand(wedges: readonly Wedge[], gap: number): number {
  return Math.max(0, ...wedges.map(({ phi, facing }) => clearOfWedge(facing, gap, phi)));
}

/** An arm that runs into the point of its wedges keeps at least this share of its reach there. */
const SHARE_IN_POINT = 0.5;

/**
 * How an arm that runs into the point tapers: at distance d from the junction it reaches d * slope - inset into a wedge.
 * On a side without a wedge, and where what it reaches is clear anyway, the slope is Infinity.
 */
export interface Taper {
  readonly left: WedgeSide;
  readonly right: WedgeSide;
}

export interface WedgeSide {
  readonly slope: number;
  readonly inset: number;
}

export const OPEN: WedgeSide = { slope: Infinity, inset: 0 };

/** An arm's part of its wedges, and how far from the junction it begins: where it reaches a `share` of its full reach. */
export function taperInto(
  wedges: readonly Wedge[],
  gap: number,
  share = SHARE_IN_POINT,
): { setback: number; taper: Taper } | null {
  if (wedges.length === 0) return null;
  const parts = wedges.map((wedge) => ({ right: wedge.right, ...partOf(wedge, gap, share) }));
  const side = (right: boolean) => parts.find((candidate) => candidate.right === right)?.side ?? OPEN;
  return {
    setback: Math.max(...parts.map(({ demand }) => demand)),
    taper: { left: side(false), right: side(true) },
  };
}

/** For arms of full length a treatment may begin so much later, mm. */
const LATER = 0.5;

/**
 * What an arm may take of a wedge of angle phi. Its half of it, up to half a gap short of the bisector: slope
 * tan(phi / 2), inset gap / (2 cos(phi / 2)); or, where that is more, up to a gap short of all that the neighbor reaches,
 * b to this side of its own line: d sin(phi) - v cos(phi) >= b + gap. In an obtuse wedge that leaves the arm its whole reach
 * from d = (b + gap) / sin(phi) on. The neighbor does the same, and wherever it lies neither comes nearer than the gap.
 */
function partOf(
  { phi, facing, other }: Wedge,
  gap: number,
  share: number,
): { side: WedgeSide; demand: number } {
  const fullAt = ({ slope, inset }: WedgeSide) => (facing + inset) / slope;
  const half = { slope: Math.tan(phi / 2), inset: gap / (2 * Math.cos(phi / 2)) };
  const demand = (share * facing + half.inset) / half.slope;
  if (phi >= Math.PI / 2) {
    const clear = (other + gap) / Math.sin(phi);
    return clear <= demand + LATER ? { side: OPEN, demand: clear } : { side: half, demand };
  }
  const beside = { slope: Math.tan(phi), inset: (other + gap) / Math.cos(phi) };
  if (fullAt(beside) >= fullAt(half)) return { side: half, demand };
  if (fullAt(beside) <= demand + LATER) return { side: beside, demand: fullAt(beside) };
  return { side: beside, demand: Math.min(demand, (share * facing + beside.inset) / beside.slope) };
}

interface Neighbor {
  readonly arm: Arm;
  /** angle between the two, 0 to a full turn */
  readonly phi: number;
  /** clockwise as drawn, which is to the right hand of someone walking away */
  readonly right: boolean;
}

/** The arms next to this one on both sides. */
function neighbors(junction: Junction, arm: Arm): Neighbor[] {
  const others = junction.arms
    .filter((other) => other !== arm)
    .map((other) => {
      const turn = wrapAngle(other.direction - arm.direction);
      return { arm: other, clockwise: turn < 0 ? turn + 2 * Math.PI : turn };
    })
    .sort((a, b) => a.clockwise - b.clockwise);
  if (others.length === 0) return [];
  const right = others[0];
  const left = others[others.length - 1];
  return [
    { arm: right.arm, phi: right.clockwise, right: true },
    { arm: left.arm, phi: 2 * Math.PI - left.clockwise, right: false },
  ];
}

const turnTo = (a: Arm, b: Arm): number => Math.abs(wrapAngle(b.direction - a.direction));
