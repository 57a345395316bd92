import type { Arm, Junction, SeamMap } from '../block/seam-map.js';
import type { Manner } from '../formats/dressing.js';
import type { Corner, GuideLine } from '../geometry/guide-line.js';
import { wrapAngle } from '../geometry/point.js';
import type { Reach } from './band.js';
import { movedClear } from './clear-of-curve.js';
import type { Bound } from './cloth.js';
import {
  type ArmReach,
  clearOfThrough,
  clearOfWedge,
  meeting,
  OFF_COVER,
  OPEN,
  type Taper,
  taperInto,
  type WedgeSide,
  wedgeDemand,
  wedgesOf,
} from './ends.js';
import type { EndKind } from './fit.js';
import { toSeam, type Walk } from './walk.js';

/** A piece of a walked line that is dressed in one go, and how its two ends are made. */
export interface Span {
  readonly start: SpanEnd;
  readonly end: SpanEnd;
  /** corners inside that the treatment turns */
  readonly corners: readonly Corner[];
  /** the span is a whole ring: no ends */
  readonly ring: boolean;
}

export interface SpanEnd {
  readonly kind: EndKind;
  /** u of the walk at which the line's own end is */
  readonly at: number;
  /** where repeats end, measured into the span from `at`, without overhang; negative beyond it */
  readonly setback: number;
  /** slant of the line ended on, as Mitre.slope; 0 when square */
  readonly slope: number;
  /** what its thread must stay beside */
  readonly bound: Bound | null;
  /** what accents alone stay beside: a bare seam that thread may lean over, but no figure is to lie across */
  readonly figureBound?: Bound;
  /** how the reach shrinks into the point of a junction where no line runs through; left and right of the walk */
  readonly taper: Taper | null;
  /** index into the map's junctions, -1 where there is none */
  readonly junction: number;
}

/** A part of a walked line, from and to in its u. */
export interface TightPart {
  readonly from: number;
  readonly to: number;
  /** what presses it is another treatment beside it, not its own bend */
  readonly beside: boolean;
  /** name of the area that is kept clear there; null where none is */
  readonly kept: string | null;
}

export interface EndRules {
  readonly map: SeamMap;
  /** reach of each arm's treatment as seen walking away from the junction, 0 when bare */
  readonly reach: ArmReach;
  /** @param u of the walk, where it meets that line */
  readonly manner: (through: number | 'outline' | null, u: number) => Manner;
  readonly gap: number;
  readonly outline: 'trim' | 'join' | 'free';
  /** whether a line of the block has a treatment */
  readonly dressed: (seam: number | 'outline') => boolean;
  /** this line's reach at a place, to both hands of the walk */
  readonly ownAt: (u: number) => Reach;
  /** parts of the line too tight to be dressed, ascending */
  readonly tight: readonly TightPart[];
  /** guide line of a dressed line's treatment */
  readonly guideOf: (seam: number | 'outline') => GuideLine | null;
  /** whether the treatment breaks at a corner of this turn, positive to the left */
  readonly breaksAt: (turn: number) => boolean;
  /** how little of its reach it may shrink to in the point of a corner it breaks at; null where it ends clear of that */
  readonly shareInCorner: (u: number) => number | null;
  /** whether it is a row of loops that hang together */
  readonly linked: () => boolean;
}

/** Trimmed in the hoop, then edged: repeats end this far inside the outline, mm. Common practice. */
const TRIM_INSIDE = 0.7;
/** Joined into other work: stitches run this far past the outline, mm. Common practice. */
const JOIN_BEYOND = 2.5;
/** Cuts let needle points lie this far over the line, so that points meant to be on it stay. */
const CUT_SLACK = 0.05;
/** A slant steeper than this is not leaned to: the repeat would be pulled out of shape. */
const STEEPEST_LEAN = 0.6;
/** What leans as the line ended on does, but for this share of it, is as good as beside it. */
const LEAST_SLANT = 0.01;
/** Thread that reaches further than this leaves room for loops between its strokes, mm. Common practice. */
const CLOSE_COVER = 4;

/** Cuts a walked line into spans at crossings it does not run through, corners it breaks at, and its ends. */
export function spansOf(walk: Walk, rules: EndRules): Span[] {
  const { guide } = walk;
  const breaks: { u: number; ends: [SpanEnd, SpanEnd] }[] = [];
  // What lies in a part that stays bare ends there already.
  const isBare = (u: number) => rules.tight.some(({ from, to }) => u > from + 1e-6 && u < to - 1e-6);
  for (const { u, junction } of walk.crossings) {
    const joint = rules.map.junctions[junction];
    if (joint.through === walk.seam || joint.through === null || !rules.dressed(joint.through)) continue;
    if (isBare(u)) continue;
    breaks.push({
      u,
      ends: [
        junctionEnd(walk, rules, junction, u, -1, 'crossing'),
        junctionEnd(walk, rules, junction, u, 1, 'crossing'),
      ],
    });
  }
  for (const corner of guide.corners) {
    if (!rules.breaksAt(corner.turn) || isBare(corner.u)) continue;
    const end = cornerEnd(rules.ownAt(corner.u), corner, rules.gap, rules.shareInCorner(corner.u));
    breaks.push({ u: corner.u, ends: [end, end] });
  }
  for (const { from, to } of rules.tight) {
    if (to - from >= guide.length - 1e-6) return [];
    breaks.push({ u: from, ends: [plainEnd('corner', from), plainEnd('corner', to)] });
  }
  breaks.sort((a, b) => a.u - b.u);
  const turned = guide.corners.filter((corner) => !rules.breaksAt(corner.turn));
  const within = (a: number, b: number) => turned.filter(({ u }) => u > a + 1e-6 && u < b - 1e-6);

  if (walk.closed && breaks.length === 0) {
    const end = plainEnd('ring', 0);
    // A corner the ring starts at is both its ends, and none inside.
    return [{ start: end, end: { ...end, at: guide.length }, corners: within(0, guide.length), ring: true }];
  }
  if (walk.closed && breaks[0].u > 1e-6) {
    // A ring that is broken only elsewhere is also cut where its walk starts, so that no part of it is lost.
    const end = plainEnd('corner', 0);
    breaks.unshift({ u: 0, ends: [end, end] });
  }
  const first = walk.closed ? breaks[0].ends[1] : lineEnd(walk, rules, 0);
  const last = walk.closed ? { ...breaks[0].ends[0], at: guide.length } : lineEnd(walk, rules, 1);
  const inner = walk.closed ? breaks.slice(1) : breaks;
  const starts = [first, ...inner.map((found) => found.ends[1])];
  const ends = [...inner.map((found) => found.ends[0]), last];
  return starts
    .map((start, i) => ({ start, end: ends[i], corners: within(start.at, ends[i].at), ring: false }))
    .filter(({ start, end }) => end.at > start.at + 1e-6);
}

/** An end at which nothing stands in the way. */
export const plainEnd = (kind: EndKind, at: number): SpanEnd => ({
  kind,
  at,
  setback: 0,
  slope: 0,
  bound: null,
  taper: null,
  junction: -1,
});

function lineEnd(walk: Walk, rules: EndRules, which: 0 | 1): SpanEnd {
  const at = which === 0 ? 0 : walk.guide.length;
  const end = walk.ends?.[which];
  if (!end || end.junction < 0)
    return { kind: 'free', at, setback: 0, slope: 0, bound: null, taper: null, junction: -1 };
  return junctionEnd(
    walk,
    rules,
    end.junction,
    at,
    which === 0 ? 1 : -1,
    end.kind === 'outline' ? 'outline' : 'junction',
  );
}

/** @param sense +1 when the span leads away from the junction along the walk, -1 when it comes in to it */
function junctionEnd(
  walk: Walk,
  rules: EndRules,
  junction: number,
  at: number,
  sense: 1 | -1,
  kind: EndKind,
): SpanEnd {
  const joint = rules.map.junctions[junction];
  const plain: { -readonly [Key in keyof SpanEnd]: SpanEnd[Key] } = {
    kind,
    at,
    setback: 0,
    slope: 0,
    bound: null,
    taper: null,
    junction,
  };
  const arm = armOf(walk, joint, at, sense);
  if (!arm) return plain;
  const through = joint.onOutline ? 'outline' : joint.through;
  const wedges = wedgesOf(joint, arm, through, rules.reach);
  const manner = rules.manner(through, at);
  const tucks = manner === 'tuck';
  const point = tucks ? taperInto(wedges, rules.gap) : null;
  const wedge = tucks ? (point?.setback ?? 0) : wedgeDemand(wedges, rules.gap);
  if (point) {
    const { left, right } = point.taper;
    plain.taper = sense === 1 ? point.taper : { left: right, right: left };
  }
  if (through === null || through === walk.seam) return { ...plain, setback: wedge };
  const meets = meeting(joint, arm, through, rules.reach);
  if (!meets) return { ...plain, setback: wedge };

  const sin = Math.max(0.2, Math.sin(meets.theta));
  const delta = wrapAngle(meets.arms[0].direction - arm.direction);
  const lean = Math.min(STEEPEST_LEAN, Math.max(-STEEPEST_LEAN, -Math.cos(delta) / Math.sin(delta)));
  const slope = sense === 1 ? lean : -lean;
  const beside = (inside: number): Bound => ({
    at: joint.at,
    own: arm,
    through: meets.arms,
    inside: inside - CUT_SLACK,
  });

  if (through === 'outline' && (tucks || !rules.dressed('outline'))) {
    // What runs past is cut when the block is joined, so it need not lean; under an edge of its own nothing runs past.
    if (rules.outline === 'join' && !rules.dressed('outline'))
      return { ...plain, setback: wedge - JOIN_BEYOND / sin, bound: beside(-JOIN_BEYOND) };
    const inside = rules.outline === 'trim' ? TRIM_INSIDE : 0;
    const end = { ...plain, setback: Math.max(wedge, inside / sin), slope, bound: beside(inside) };
    if (!rules.linked()) return end;
    const side = besideSlant(meets.theta, Math.abs(lean), inside);
    const isRight = delta > 0 === (sense === 1);
    return { ...end, taper: isRight ? { left: OPEN, right: side } : { left: side, right: OPEN } };
  }
  if (!rules.dressed(through)) return { ...plain, setback: wedge, slope, figureBound: beside(0) };
  const { throughReach, facing, theta } = meets;
  if (tucks) {
    // the last loop would be left out under other thread, and its length of the seam stay bare
    const clear = throughReach <= CLOSE_COVER && rules.linked() ? (throughReach + OFF_COVER) / sin : 0;
    return { ...plain, setback: Math.max(wedge, clear), slope, bound: beside(0) };
  }
  if (manner === 'bevel') {
    const clear = throughReach + rules.gap;
    return { ...plain, setback: Math.max(wedge, clear / sin), bound: beside(clear) };
  }
  const straight = Math.max(wedge, clearOfThrough(throughReach, rules.gap, facing, theta));
  const guide = rules.guideOf(through);
  const clear = throughReach + rules.gap;
  return {
    ...plain,
    setback: guide ? movedClear(walk.guide, guide, at, sense, straight, clear, rules.ownAt(at)) : straight,
  };
}

/**
 * How the reach shrinks on the acute side of a line that is met at the angle theta, so that it stays `inside` it: the line is
 * d tan(theta) away across the seam. Needle points lean on by so much of v already, as far as `lean` goes.
 */
function besideSlant(theta: number, lean: number, inside: number): WedgeSide {
  const rest = Math.cos(theta) - lean * Math.sin(theta);
  return rest < LEAST_SLANT ? OPEN : { slope: Math.sin(theta) / rest, inset: inside / rest };
}

function armOf(walk: Walk, joint: Junction, at: number, sense: 1 | -1): Arm | undefined {
  const u = toSeam(walk, at);
  const own = (walk.reverse ? -sense : sense) as 1 | -1;
  const apart = (arm: Arm) => {
    const straight = Math.abs(arm.u - u);
    return walk.closed ? Math.min(straight, Math.abs(walk.seamLength - straight)) : straight;
  };
  return joint.arms
    .filter((arm) => arm.seam === walk.seam && arm.sense === own)
    .sort((a, b) => apart(a) - apart(b))[0];
}

/**
 * The end at a corner that is not turned: in its inner wedge both sides keep clear of each other, shrinking toward the
 * point down to a share of their reach, or ending before it at their full reach.
 */
export function cornerEnd(own: Reach, corner: Corner, gap: number, share: number | null = null): SpanEnd {
  const isLeft = corner.turn > 0;
  const facing = isLeft ? own.left : own.right;
  const phi = Math.PI - Math.abs(corner.turn);
  const point =
    share === null ? null : taperInto([{ phi, right: !isLeft, facing, other: facing }], gap, share);
  if (point)
    return { ...plainEnd('corner', corner.u), setback: Math.max(0, point.setback), taper: point.taper };
  return { ...plainEnd('corner', corner.u), setback: Math.max(0, clearOfWedge(facing, gap, phi)) };
}
