import type { Chain } from '../fit/fit.js';
import type { Trail } from './graph/trail.js';
import { type Holes, KNOT_RING, scatter } from './holes.js';
import { type Legs, Manner } from './legs.js';
import type { NeedlePoints } from './needle-points.js';
import type { Craft } from './run.js';
import type { Samples } from './samples.js';
import { tieIn, tieOff } from './tie.js';
import { knotRadius, workKnot } from './work-knot.js';
import { type Pass, workCurve, workSatin, workStraight } from './work-leg.js';

/** A ring takes at most this share of a leg. */
const RING_SHARE = 0.3;

/** Sews a trail as one run, tied in and off. */
export function sewTrail(
  points: NeedlePoints,
  chain: Chain,
  trail: Trail,
  legs: Legs,
  holes: Holes,
  craft: Craft,
  samples: Samples,
): void {
  if (trail.length === 0) return;
  const { sewn, whole } = holes;
  const at = new Float64Array(2);
  // one record for all legs: nothing is made on the way
  const pass: { -readonly [Key in keyof Pass]: Pass[Key] } = {
    leg: 0,
    back: false,
    turn: 0,
    of: 0,
    hand: holes.hand,
    skip: 0,
    stop: 0,
    x: 0,
    y: 0,
  };
  let firstEnd = 0;
  let lastStart = 0;
  for (let i = 0; i < trail.length; i++) {
    const leg = trail[i] >> 1;
    const back = (trail[i] & 1) === 1;
    const a = back ? chain.to[leg] : chain.from[leg];
    const b = back ? chain.from[leg] : chain.to[leg];
    const manner = legs.manner[leg];
    const least = RING_SHARE * legs.length[leg];
    const skip = Math.min(holes.ring[chain.from[leg]], least);
    const stop = Math.min(holes.ring[chain.to[leg]], least);
    if (i === 0 || holes.ring[a] > 0) {
      leave(chain, holes, leg, a, manner, back ? -stop : skip, craft, at);
      if (i === 0) points.beginRun(at[0], at[1]);
      else if (manner !== Manner.Knot) points.sew(at[0], at[1]);
    }
    lastStart = points.count - 1;
    if (manner === Manner.Knot) {
      const next = i + 1 < trail.length ? trail[i + 1] : null;
      const toward = next === null ? null : leavingKnot(chain, legs, leg, next, craft, at);
      const [x, y] = [chain.nodes[2 * a], chain.nodes[2 * a + 1]];
      workKnot(points, { x, y, size: chain.size[leg], hand: holes.hand, toward }, craft);
    } else {
      arrive(chain, holes, leg, b, back ? skip : -stop, craft, at);
      pass.leg = leg;
      pass.back = back;
      pass.turn = sewn[leg];
      pass.of = whole[leg];
      pass.skip = skip;
      pass.stop = stop;
      pass.x = at[0];
      pass.y = at[1];
      if (manner === Manner.Straight) workStraight(points, pass, craft);
      else if (manner === Manner.Curve) workCurve(points, chain, pass, craft, samples);
      else workSatin(points, chain, pass, craft, samples);
    }
    sewn[leg]++;
    if (i === 0) firstEnd = points.count - 1;
  }
  if (points.count - points.runStart < 2) {
    points.dropRunIfEmpty();
    return;
  }
  const tied = tieOff(points, Math.min(lastStart, points.count - 2), craft.shortest);
  tieIn(points, Math.max(points.runStart + 1, Math.min(firstEnd, tied)), craft.shortest);
}

/** Where a leg starts: its node, or its place on the node's ring. `reach` > 0 is mm from `from`, < 0 from `to`. */
function leave(
  chain: Chain,
  holes: Holes,
  leg: number,
  node: number,
  manner: number,
  reach: number,
  craft: Craft,
  at: Float64Array,
): void {
  at[0] = chain.nodes[2 * node];
  at[1] = chain.nodes[2 * node + 1];
  if (manner === Manner.Knot) {
    at[0] += KNOT_RING * Math.cos(holes.heading);
    at[1] += KNOT_RING * Math.sin(holes.heading);
  } else if (holes.ring[node] > 0) onRing(chain, holes, leg, reach, craft, at);
}

/** The direction from a knot to where the next step of the trail comes out from beneath it; null where that is a knot too. */
function leavingKnot(
  chain: Chain,
  legs: Legs,
  knot: number,
  next: number,
  craft: Craft,
  at: Float64Array,
): number | null {
  if (legs.manner[next >> 1] === Manner.Knot) return null;
  const reach = knotRadius(chain.size[knot], craft);
  onPath(chain, next >> 1, next & 1 ? -reach : reach, at);
  const node = chain.from[knot];
  return Math.atan2(at[1] - chain.nodes[2 * node + 1], at[0] - chain.nodes[2 * node]);
}

function arrive(
  chain: Chain,
  holes: Holes,
  leg: number,
  node: number,
  reach: number,
  craft: Craft,
  at: Float64Array,
): void {
  if (holes.ring[node] > 0) {
    onRing(chain, holes, leg, reach, craft, at);
    return;
  }
  scatter(holes.visits[node]++, craft, holes, at);
  at[0] += chain.nodes[2 * node];
  at[1] += chain.nodes[2 * node + 1];
}

/** A leg's own hole on a ring gets a piercing from every pass, and one from each tie. */
function onRing(
  chain: Chain,
  holes: Holes,
  leg: number,
  reach: number,
  craft: Craft,
  at: Float64Array,
): void {
  scatter(holes.sewn[leg] + 2, craft, holes, at);
  const x = at[0];
  const y = at[1];
  onPath(chain, leg, reach, at);
  at[0] += x;
  at[1] += y;
}

/** The point `reach` mm along a leg from its start, or from its end when negative. */
function onPath(chain: Chain, leg: number, reach: number, at: Float64Array): void {
  const { path, pathStart } = chain;
  const step = reach < 0 ? -1 : 1;
  let i = reach < 0 ? pathStart[leg + 1] - 1 : pathStart[leg];
  const last = reach < 0 ? pathStart[leg] : pathStart[leg + 1] - 1;
  let rest = Math.abs(reach);
  for (; i !== last; i += step) {
    const dx = path[2 * (i + step)] - path[2 * i];
    const dy = path[2 * (i + step) + 1] - path[2 * i + 1];
    const length = Math.sqrt(dx * dx + dy * dy);
    if (rest <= length) {
      const t = length > 0 ? rest / length : 0;
      at[0] = path[2 * i] + dx * t;
      at[1] = path[2 * i + 1] + dy * t;
      return;
    }
    rest -= length;
  }
  at[0] = path[2 * last];
  at[1] = path[2 * last + 1];
}
