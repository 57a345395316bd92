import type { Corner, GuideLine } from './guide-line.js';
import { wrapAngle } from './point.js';
import { cumulativeLength, type Points, pointCount } from './polyline.js';
import { FAIRING, SAME_POINT } from './tolerances.js';

/** Arcs that ease a vertex are sampled at most this far apart in direction: sag stays under 0.004 of their radius. */
const EASE_STEP = (2 * Math.PI) / 180;

/**
 * The guide line along a polyline. Between corners every vertex is eased by an arc that touches both its edges and
 * strays at most FAIRING from the vertex, so directions are continuous there; a corner keeps its point and has two
 * directions. For a polyline that was flattened from a curve the arcs give the curve back: lengths agree to 0.001 %.
 *
 * A vertex turning by tau, eased over a length d on both edges, moves by d tan(tau / 4) (tangent-chord geometry).
 *
 * @param points dense polyline, mm; a closed one repeats its first point
 * @param corners positions along `points` by arc length; a closed line with corners should start on one of them
 */
export function guideFromLine(points: Points, corners: readonly Corner[], closed: boolean): GuideLine {
  const clean = withoutRepeats(points);
  const n = pointCount(clean);
  if (n < 2) throw new RangeError('a guide line needs two different points');
  const at = cumulativeLength(clean);
    const isCorner = cornerVertices(at, corners, closed);
  const out = new Samples();
  const direction = (i: number) =>
    Math.atan2(clean[2 * i + 3] - clean[2 * i + 1], clean[2 * i + 2] - clean[2 * i]);
  const edge = (i: number) => at[i + 1] - at[i];

  const ease = (before: number, after: number, atVertex: number): number => {
    const turn = Math.abs(wrapAngle(direction(after) - direction(before)));
    if (turn < 1e-12 || isCorner[atVertex]) return 0;
    return Math.min(edge(before) / 2, edge(after) / 2, FAIRING / Math.tan(turn / 4));
  };
  const point = (i: number, along: number, theta: number): [number, number] => [
    clean[2 * i] + along * Math.cos(theta),
    clean[2 * i + 1] + along * Math.sin(theta),
  ];

  // A ring without a corner at its start is entered in the middle of its first edge's easing: keep the vertex itself
  // as the start, with the direction half way, by easing across the seam of the ring.
  const ringEase = closed && !isCorner[0] ? ease(n - 2, 0, 0) : 0;
  let theta = direction(0);
  const ringTurn = ringEase > 0 ? wrapAngle(theta - direction(n - 2)) : 0;
  if (ringEase > 0) {
    const middle = arcMiddle(clean, 0, direction(n - 2), ringTurn, ringEase);
    out.add(0, middle.x, middle.y, theta - ringTurn / 2);
    out.arc(middle.x, middle.y, theta - ringTurn / 2, ringTurn / 2, middle.radius);
  } else {
    out.add(0, clean[0], clean[1], theta);
  }
  const found: Corner[] = [];
  for (let i = 1; i < n - 1; i++) {
    const turn = wrapAngle(direction(i) - direction(i - 1));
    const d = ease(i - 1, i, i);
    if (isCorner[i]) {
      out.lineTo(clean[2 * i], clean[2 * i + 1]);
      found.push({ u: out.length(), turn: -turn });
      theta += turn;
      out.add(0, clean[2 * i], clean[2 * i + 1], theta);
    } else if (d === 0) {
      out.lineTo(clean[2 * i], clean[2 * i + 1]);
      theta += turn;
    } else {
      const [x, y] = point(i, -d, theta);
      out.lineTo(x, y);
      const radius = d / Math.tan(Math.abs(turn) / 2);
      out.arc(x, y, theta, turn, radius);
      theta += turn;
    }
  }
  if (ringEase > 0) {
    const [x, y] = point(n - 1, -ringEase, theta);
    out.lineTo(x, y);
    out.arc(x, y, theta, ringTurn / 2, ringEase / Math.tan(Math.abs(ringTurn) / 2));
  } else {
    out.lineTo(clean[2 * n - 2], clean[2 * n - 1]);
    if (closed && isCorner[0]) {
      const turn = wrapAngle(direction(0) - direction(n - 2));
      found.unshift({ u: 0, turn: -turn });
    }
  }
  return out.finish(closed, found);
}

function withoutRepeats(points: Points): Points {
  const kept: number[] = [points[0], points[1]];
  for (let i = 1; i < pointCount(points); i++) {
    const k = kept.length;
    if (Math.hypot(points[2 * i] - kept[k - 2], points[2 * i + 1] - kept[k - 1]) > SAME_POINT) {
      kept.push(points[2 * i], points[2 * i + 1]);
    }
  }
  return Float64Array.from(kept);
}

/** Marks the vertices that corners name; a corner at the start of a closed line marks both its ends. */
function cornerVertices(at: Float64Array, corners: readonly Corner[], closed: boolean): Uint8Array {
  const marks = new Uint8Array(at.length);
  for (const { u } of corners) {
    let low = 0;
    let high = at.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (at[middle] < u) low = middle + 1;
      else high = middle;
    }
    const nearest = low > 0 && u - at[low - 1] < at[low] - u ? low - 1 : low;
    marks[nearest] = 1;
  }
  if (closed && (marks[0] || marks[at.length - 1])) {
    marks[0] = 1;
    marks[at.length - 1] = 1;
  }
  return marks;
}

function arcMiddle(line: Points, i: number, thetaIn: number, turn: number, d: number) {
  const radius = d / Math.tan(Math.abs(turn) / 2);
  const bend = d * Math.tan(Math.abs(turn) / 4);
  const inward = thetaIn + turn / 2 + (Math.sign(turn) * Math.PI) / 2;
  return {
    radius,
    x: line[2 * i] + bend * Math.cos(inward),
    y: line[2 * i + 1] + bend * Math.sin(inward),
  };
}

/** Grows the samples of a guide line. */
class Samples {
  private readonly us: number[] = [];
  private readonly xs: number[] = [];
  private readonly ys: number[] = [];
  private readonly thetas: number[] = [];

  length(): number {
    return this.us[this.us.length - 1];
  }

  add(along: number, x: number, y: number, theta: number): void {
    this.us.push(this.us.length ? this.length() + along : 0);
    this.xs.push(x);
    this.ys.push(y);
    this.thetas.push(theta);
  }

  lineTo(x: number, y: number): void {
    const last = this.us.length - 1;
    const along = Math.hypot(x - this.xs[last], y - this.ys[last]);
    if (along > SAME_POINT) this.add(along, x, y, this.thetas[last]);
  }

  /** From the last sample, which is at (x, y) heading theta, along an arc of `turn` radians (y down: + is right). */
  arc(x: number, y: number, theta: number, turn: number, radius: number): void {
    const steps = Math.max(1, Math.ceil(Math.abs(turn) / EASE_STEP));
    const side = Math.sign(turn);
    const cx = x - side * radius * Math.sin(theta);
    const cy = y + side * radius * Math.cos(theta);
    for (let k = 1; k <= steps; k++) {
      const heading = theta + (turn * k) / steps;
      this.add(
        (radius * Math.abs(turn)) / steps,
        cx + side * radius * Math.sin(heading),
        cy - side * radius * Math.cos(heading),
        heading,
      );
    }
  }

  finish(closed: boolean, corners: readonly Corner[]): GuideLine {
    return {
      length: this.length(),
      closed,
      u: Float64Array.from(this.us),
      x: Float64Array.from(this.xs),
      y: Float64Array.from(this.ys),
      theta: Float64Array.from(this.thetas),
      corners,
    };
  }
}
