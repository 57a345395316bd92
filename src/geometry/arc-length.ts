import type { Point } from './point.js';

/** A smooth curve by its parameter: where it is, and how fast it goes (the derivative, mm per unit of t). */
export interface Curve {
  readonly from: number;
  readonly to: number;
  at(t: number): Point;
  velocity(t: number): Point;
}

/** Lengths are right to this share of the whole, well under what flattening loses. */
const AGREE = 1e-9;
/** Halvings before an interval is taken as it stands; 2^-40 of a block is far below any step. */
const DEEPEST = 40;
/** Halvings in a row that must agree: near a cusp, one alone may agree by chance and be off by 0.001 %. */
const AGREEMENTS = 2;
/** First halvings that are always made, so that coarse values cannot agree by the symmetry of a curve. */
const SHALLOWEST = 2;

/**
 * Nodes and weights of the 5-point Lobatto rule on [-1, 1] (Abramowitz and Stegun, table 25.6; from memory). It looks at
 * both ends of an interval: a cusp between an end and the first node of Gauss's rule is missed by whole and halves alike.
 */
const LOBATTO = [
  [0, 32 / 45],
  [Math.sqrt(3 / 7), 49 / 90],
  [1, 1 / 10],
] as const;

/**
 * Length of a curve between two parameters. Fixed quadrature is wrong at cusps and where a curve doubles back without a
 * sign of it, so every interval is measured whole and in halves, and halved on until both agree.
 */
export function arcLength(curve: Curve, from = curve.from, to = curve.to): number {
  const whole = lobatto(curve, from, to);
  return refine(curve, from, to, whole, AGREE * roughLength(curve, from, to), 0, 0);
}

/**
 * Parameters at which the curve has come the given lengths along, measured from its start.
 *
 * @param lengths ascending; values beyond the ends are clamped to them
 */
export function parametersAt(curve: Curve, lengths: readonly number[]): number[] {
  const total = arcLength(curve);
  let t = curve.from;
  let come = 0;
  return lengths.map((wanted) => {
    if (wanted <= 0) return curve.from;
    if (wanted >= total) return curve.to;
    const next = advance(curve, t, wanted - come);
    t = next;
    come = wanted;
    return next;
  });
}

/** The point at each length along the curve. */
export const pointsAt = (curve: Curve, lengths: readonly number[]): Point[] =>
  parametersAt(curve, lengths).map((t) => curve.at(t));

/** The parameter `length` further along than `t0`: Newton's step where it stays inside the bracket, else halving. */
function advance(curve: Curve, t0: number, length: number): number {
  let low = t0;
  let high = curve.to;
  let lowLength = 0;
  let t = t0;
  let at = 0;
  for (let i = 0; i < 100 && high - low > 1e-15 * Math.max(1, Math.abs(curve.to)); i++) {
    const miss = length - at;
    if (Math.abs(miss) <= 1e-12 * Math.max(1, length)) return t;
    const newton = t + miss / speed(curve.velocity(t));
    t = newton > low && newton < high ? newton : (low + high) / 2;
    at = lowLength + arcLength(curve, low, t);
    if (at < length) {
      low = t;
      lowLength = at;
    } else high = t;
  }
  return t;
}

const speed = (velocity: Point): number => Math.sqrt(velocity[0] ** 2 + velocity[1] ** 2);

function refine(
  curve: Curve,
  a: number,
  b: number,
  whole: number,
  allowed: number,
  depth: number,
  agreed: number,
): number {
  const middle = (a + b) / 2;
  const left = lobatto(curve, a, middle);
  const right = lobatto(curve, middle, b);
  const agrees = depth >= SHALLOWEST && Math.abs(left + right - whole) <= allowed;
  const inRow = agrees ? agreed + 1 : 0;
  if (inRow >= AGREEMENTS || depth >= DEEPEST) return left + right;
  return (
    refine(curve, a, middle, left, allowed / 2, depth + 1, inRow) +
    refine(curve, middle, b, right, allowed / 2, depth + 1, inRow)
  );
}

function lobatto(curve: Curve, a: number, b: number): number {
  const half = (b - a) / 2;
  const middle = (a + b) / 2;
  let sum = 0;
  for (const [node, weight] of LOBATTO) {
    sum += weight * speed(curve.velocity(middle + half * node));
    if (node) sum += weight * speed(curve.velocity(middle - half * node));
  }
  return sum * Math.abs(half);
}

/** A lower bound on the size of the curve, to measure agreement against. */
function roughLength(curve: Curve, from: number, to: number): number {
  let sum = 0;
  let last = curve.at(from);
  for (let i = 1; i <= 8; i++) {
    const next = curve.at(from + ((to - from) * i) / 8);
    sum += Math.hypot(next[0] - last[0], next[1] - last[1]);
    last = next;
  }
  return Math.max(sum, Number.MIN_VALUE);
}
