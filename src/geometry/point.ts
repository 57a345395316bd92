/** A point or vector in millimeters, x right, y down. */
export type Point = readonly [x: number, y: number];

export function distance(a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  return Math.sqrt(dx * dx + dy * dy);
}
export const between = (a: Point, b: Point, t: number): Point => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
];
/** The unit vector to the left hand of someone walking in direction theta on the drawn page: (ty, -tx). */
export const leftOf = (theta: number): Point => [Math.sin(theta), -Math.cos(theta)];

/** An angle brought into (-pi, pi]. */
export function wrapAngle(angle: number): number {
  const turn = angle % (2 * Math.PI);
  if (turn > Math.PI) return turn - 2 * Math.PI;
  return turn <= -Math.PI ? turn + 2 * Math.PI : turn;
}
