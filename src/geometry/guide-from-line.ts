import type { Corner, GuideLine } from './guide-line.js';
import { GuideSamples } from './guide-samples.js';
import { wrapAngle } from './point.js';
import { type Points, pointCount } from './polyline.js';
import { verticesOf } from './vertices.js';

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
  const { points: clean, at, isCorner, budget } = verticesOf(points, corners, closed);
  const n = pointCount(clean);
  if (n < 2) throw new RangeError('a guide line needs two different points');
  const out = new GuideSamples();
  const direction = (i: number) =>
    Math.atan2(clean[2 * i + 3] - clean[2 * i + 1], clean[2 * i + 2] - clean[2 * i]);
  const edge = (i: number) => at[i + 1] - at[i];

  const ease = (before: number, after: number, atVertex: number): number => {
    const turn = Math.abs(wrapAngle(direction(after) - direction(before)));
    if (turn < 1e-12 || isCorner[atVertex]) return 0;
    return Math.min(edge(before) / 2, edge(after) / 2, budget[atVertex] / Math.tan(turn / 4));
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
