import type { Arm, Junction } from '../block/seam-map.js';
import { wrapAngle } from '../geometry/point.js';

/**
 * How far from a junction a treatment ends. All lengths mm, measured along the arm's line from the junction point.
 */

/** Thread 0.4 plus 0.2 clear, measured between needle points: the default gap between two bands. */
export const DEFAULT_GAP = 0.6;

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
  /** directions of the two through arms */
  readonly arms: readonly [number, number];
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
    arms: [nearer.direction, other.direction],
  };
}

/** The largest demand of the wedges between this arm and its neighbors, where neither runs through; at least 0. */
export function wedgeDemand(
  junction: Junction,
  arm: Arm,
  through: number | 'outline' | null,
  gap: number,
  reach: ArmReach,
): number {
  const mine = reach(arm);
  let demand = 0;
  for (const other of neighbors(junction, arm)) {
    if (other.arm.seam === through || other.arm.seam === 'outline' || arm.seam === through) continue;
    const its = reach(other.arm);
    if (its.left === 0 && its.right === 0) continue;
    if (other.wedge >= Math.PI) continue;
    const facing = other.clockwise ? mine.right : mine.left;
    demand = Math.max(demand, clearOfWedge(facing, gap, other.wedge));
  }
  return demand;
}

interface Neighbor {
  readonly arm: Arm;
  /** angle between the two, 0 to a full turn */
  readonly wedge: number;
  /** clockwise as drawn, which is to the right hand of someone walking away */
  readonly clockwise: boolean;
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
    { arm: right.arm, wedge: right.clockwise, clockwise: true },
    { arm: left.arm, wedge: 2 * Math.PI - left.clockwise, clockwise: false },
  ];
}

const turnTo = (a: Arm, b: Arm): number => Math.abs(wrapAngle(b.direction - a.direction));
