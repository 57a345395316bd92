import type { Unit, UnitLeg } from '../stitches/stitch.js';
import { heldParts } from './held-parts.js';
import { acrossOf, boxOf, lengthOf, SAME } from './leg-box.js';
import { isMirrored, mirroredOf } from './mirrored-legs.js';

/** A figure reaches across its line at least so far, mm; what lies on the line is what a plain line gives as well. */
const LEAST_ACROSS = 0.5;
/** A part that is its own mirror image looks meant: it is taken before one that has up to so many times its legs. */
const MIRRORED = 2.5;

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

const isSeen = ({ kind }: UnitLeg): boolean => kind !== 'under';

/** How much of its line a figure takes, and how far it reaches from that, mm. */
export function sizeOf({ legs }: Unit): { along: number; reach: number } {
  const box = boxOf(legs);
  return { along: lengthOf(box), reach: Math.max(box.most, -box.least) };
}
