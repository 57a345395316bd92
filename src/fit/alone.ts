import type { Unit, UnitLeg } from '../stitches/stitch.js';

/** A figure reaches across its line at least so far, mm; what lies on the line is what a plain line gives as well. */
const LEAST_ACROSS = 0.5;
/** Lengths that differ by less are the same to the eye in so small a figure, mm. */
const SAME = 0.35;
/** A part that is its own mirror image looks meant: it is taken before one that has up to so many times its legs. */
const MIRRORED = 2.5;

interface Box {
  readonly first: number;
  readonly last: number;
  readonly least: number;
  readonly most: number;
}

/**
 * Figures of a unit that may stand by themselves, the best one first, none longer along the line than `room`: the whole
 * unit where no thread that is seen joins it to the next, else parts of what one repeat gives, as one petal with the
 * stitch that holds it, a fly, some arms of a group, two strokes that cross. Each begins at u = 0.
 */
export function* figuresAlone(unit: Unit, glide: boolean, room: number): Generator<Unit> {
  const whole = unjoined(unit);
  if (whole && lengthOf(boxOf(whole)) <= room) yield figure(unit, whole);
  const repeat = wholeRepeat(unit, glide);
  for (const legs of partsWithin(repeat, room)) yield figure(repeat.unit, legs);
}

/** All that is seen of a unit, unless it runs on into the next one. */
function unjoined(unit: Unit): readonly UnitLeg[] | null {
  const { joins, ending } = unit;
  const seen = unit.legs.filter(isSeen);
  const ends = new Set(seen.flatMap(({ from, to }) => [from, to]));
  const runsOn = joins.some(([a, b]) => ends.has(a) && ends.has(b));
  return runsOn || ending.length > 0 || !isFigure(seen) ? null : seen;
}

function figure(unit: Unit, legs: readonly UnitLeg[]): Unit {
  const { first } = boxOf(legs);
  const moved = (uv: Float64Array) => uv.map((value, i) => (i % 2 === 0 ? value - first : value));
  return {
    ...unit,
    nodes: moved(unit.nodes),
    legs: legs.map((leg) => ({ ...leg, path: moved(leg.path) })),
    joins: [],
    closing: [],
    ending: [],
  };
}

/** One unit and what closes its row. */
interface Repeat {
  readonly unit: Unit;
  /** the legs of the unit itself */
  readonly own: ReadonlySet<UnitLeg>;
  /** the stitches that hold its last loop */
  readonly ending: ReadonlySet<UnitLeg>;
}

function wholeRepeat(unit: Unit, glide: boolean): Repeat {
  const { nodes, legs, joins, closing, ending, length } = unit;
  const hand = glide ? -1 : 1;
  const behind = (uv: Float64Array) => uv.map((value, i) => (i % 2 === 0 ? value + length : hand * value));
  const count = nodes.length / 2;
  const before = new Map(joins.map(([a, b]) => [b, a]));
  const node = (i: number) => before.get(i) ?? i + count;
  const moved = (leg: UnitLeg): UnitLeg => ({
    ...leg,
    from: node(leg.from),
    to: node(leg.to),
    anchor: node(leg.anchor),
    path: behind(leg.path),
  });
  const closed = closing.map((i) => moved(legs[i]));
  const held = ending.map(moved);
  const whole = {
    ...unit,
    nodes: Float64Array.of(...nodes, ...behind(nodes)),
    legs: [...legs, ...closed, ...held],
  };
  return { unit: whole, own: new Set(legs), ending: new Set(held) };
}

/** The parts of a repeat that stand by themselves in so much room, best first. */
function partsWithin({ unit, own, ending }: Repeat, room: number): (readonly UnitLeg[])[] {
  const seen = unit.legs.filter(isSeen);
  const boxes = seen.map((leg) => boxOf([leg]));
  const found = new Map<string, { legs: readonly UnitLeg[]; rank: number; across: number }>();
  const isShaped = seen.some(({ bends }) => !bends) || isMirrored(seen);
  const take = (legs: readonly UnitLeg[]) => {
    if (!isFigure(legs.filter((leg) => !ending.has(leg))) || !legs.some(({ thread }) => thread === 0)) return;
    const isMeant = (strokesOf(legs) > 1 || legs[0].kind === 'loop') && isMirrored(legs);
    // half a flower looks like a mistake
    if (isShaped && !isMeant && strokesOf(legs) > 1) return;
    const rank = legs.filter((leg) => own.has(leg)).length * (isMeant ? MIRRORED : 1);
    found.set(legs.map((leg) => seen.indexOf(leg)).join(), { legs, rank, across: acrossOf(boxOf(legs)) });
  };
  const looked = new Set<string>();
  for (const { first } of boxes) {
    for (const { last } of boxes) {
      if (last < first || last - first > room) continue;
      const within = seen.filter((_, i) => boxes[i].first >= first - 1e-6 && boxes[i].last <= last + 1e-6);
      const key = within.map((leg) => seen.indexOf(leg)).join();
      if (looked.has(key)) continue;
      looked.add(key);
      for (const part of heldParts(within, seen, ending.size > 0)) {
        take(part);
        const mirrored = mirroredOf(part);
        if (mirrored.length === part.length) continue;
        for (const core of heldParts(mirrored, seen, ending.size > 0)) take(core);
      }
    }
  }
  return [...found.values()]
    .sort((a, b) => b.rank - a.rank || b.legs.length - a.legs.length || b.across - a.across)
    .map(({ legs }) => legs);
}

/**
 * Legs that hang together, whose loops are whole and held: without what a hand could not leave so. Where thread turns
 * back in a hole, the straight stitch that comes up there holds it; in a stitch whose last loop wants holding at the end
 * of a row, so does whatever goes on from there.
 */
function heldParts(within: readonly UnitLeg[], all: readonly UnitLeg[], held: boolean): UnitLeg[][] {
  let legs = within;
  for (;;) {
    const own = new Set(legs);
    const isLoose = (leg: UnitLeg): boolean =>
      leg.kind === 'loop' &&
      all.some((half) => half.name === leg.name && !own.has(half) && isBeside(half, leg));
    const turns = legs
      .flatMap(({ from, to }) => [from, to])
      .filter((node) => isUnheld(node, legs, all, held));
    const kept = legs.filter(
      (leg) => !isLoose(leg) && !(isBent(leg) && turns.some((node) => node === leg.from || node === leg.to)),
    );
    if (kept.length === legs.length) return connected(kept);
    legs = kept;
  }
}

const isBeside = (a: UnitLeg, b: UnitLeg): boolean => a.from === b.to && a.to === b.from;

const isBent = ({ kind }: UnitLeg): boolean => kind === 'curve' || kind === 'loop';

function isUnheld(node: number, legs: readonly UnitLeg[], all: readonly UnitLeg[], held: boolean): boolean {
  const bent = legs.filter((leg) => isBent(leg) && (leg.from === node || leg.to === node));
  if (bent.length < 2) return false;
  const after = all.slice(Math.max(...bent.map((leg) => all.indexOf(leg))) + 1);
  const holding = after.filter((leg) => leg.from === node && (leg.kind === 'straight' || held));
  return holding.length > 0 && !holding.some((leg) => legs.includes(leg));
}

/** Legs that share a hole, cross, or are laid about one point. */
function connected(legs: readonly UnitLeg[]): UnitLeg[][] {
  const groups: UnitLeg[][] = [];
  for (const leg of legs) {
    const beside = groups.filter((group) => group.some((other) => hangTogether(leg, other)));
    for (const group of beside) groups.splice(groups.indexOf(group), 1);
    const own = new Set([...beside.flat(), leg]);
    groups.push(legs.filter((one) => own.has(one)));
  }
  return groups;
}

const hangTogether = (a: UnitLeg, b: UnitLeg): boolean =>
  a.from === b.from ||
  a.from === b.to ||
  a.to === b.from ||
  a.to === b.to ||
  (!a.bends && !b.bends && a.anchor === b.anchor) ||
  (a.kind === 'straight' && b.kind === 'straight' && cross(a.path, b.path));

function cross(a: Float64Array, b: Float64Array): boolean {
  const side = (p: Float64Array, u: number, v: number) => {
    const n = p.length;
    return (p[n - 2] - p[0]) * (v - p[1]) - (p[n - 1] - p[1]) * (u - p[0]);
  };
  const parts = (p: Float64Array, q: Float64Array) =>
    side(p, q[0], q[1]) * side(p, q[q.length - 2], q[q.length - 1]) < 0;
  return parts(a, b) && parts(b, a);
}

/** Whether it is raised, or more than one slanting stroke, and clearly off the line; an upright stroke begins at the line. */
function isFigure(legs: readonly UnitLeg[]): boolean {
  if (legs.length === 0) return false;
  if (legs.some(({ kind }) => kind === 'knot' || kind === 'petal' || kind === 'loop')) return true;
  const box = boxOf(legs);
  if (Math.max(box.most, -box.least) < LEAST_ACROSS) return false;
  if (strokesOf(legs) > 1) return true;
  return lengthOf(box) < SAME && box.least < LEAST_ACROSS && box.most > -LEAST_ACROSS;
}

/** Loops come in two halves of one name; what closes a row is named as what it copies. */
const strokesOf = (legs: readonly UnitLeg[]): number =>
  new Set(legs.map((leg) => (leg.kind === 'loop' ? leg.name : leg))).size;

const isMirrored = (legs: readonly UnitLeg[]): boolean => mirroredOf(legs).length === legs.length;

/** Those legs that have one over against them, seen from the middle of all. */
function mirroredOf(legs: readonly UnitLeg[]): readonly UnitLeg[] {
  const { first, last } = boxOf(legs);
  const turned = (uv: Float64Array) => uv.map((value, i) => (i % 2 === 0 ? first + last - value : value));
  const boxes = legs.map((leg) => boxOf([leg]));
  return legs.filter((leg) => {
    const path = turned(leg.path);
    const box = boxOf([{ ...leg, path }]);
    return legs.some((other, i) => isSameBox(box, boxes[i]) && isSameWay(path, other.path));
  });
}

const isNear = (a: number, b: number): boolean => Math.abs(a - b) < SAME;

const isSameBox = (a: Box, b: Box): boolean =>
  isNear(a.first, b.first) && isNear(a.last, b.last) && isNear(a.least, b.least) && isNear(a.most, b.most);

/** Whether two paths lead between the same places, either way. */
function isSameWay(a: Float64Array, b: Float64Array): boolean {
  const [m, n] = [a.length, b.length];
  const meet = (i: number, k: number) => isNear(a[i], b[k]) && isNear(a[i + 1], b[k + 1]);
  return (meet(0, 0) && meet(m - 2, n - 2)) || (meet(0, n - 2) && meet(m - 2, 0));
}

const isSeen = ({ kind }: UnitLeg): boolean => kind !== 'under';

/** Knots and satin in all their width. */
function boxOf(legs: readonly UnitLeg[]): Box {
  let [first, last, least, most] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { path, size } of legs) {
    for (let i = 0; i < path.length; i += 2) {
      first = Math.min(first, path[i] - size / 2);
      last = Math.max(last, path[i] + size / 2);
      least = Math.min(least, path[i + 1] - size / 2);
      most = Math.max(most, path[i + 1] + size / 2);
    }
  }
  return { first, last, least, most };
}

/** How much of its line a figure takes, and how far it reaches from that, mm. */
export function sizeOf({ legs }: Unit): { along: number; reach: number } {
  const box = boxOf(legs);
  return { along: lengthOf(box), reach: Math.max(box.most, -box.least) };
}

const lengthOf = ({ first, last }: Box): number => last - first;

const acrossOf = ({ least, most }: Box): number => most - least;
