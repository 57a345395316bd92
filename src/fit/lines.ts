import type { Arm, SeamMap } from '../block/seam-map.js';
import type { Manner } from '../formats/dressing.js';
import type { Corner } from '../geometry/guide-line.js';
import { CORNER_TURN, FAIRING } from '../geometry/tolerances.js';
import type { FitRules, LineAsk } from './ask.js';
import { type Band, narrowerBand, type Reach, reachAt, shifted } from './band.js';
import { besideKept, type Kept } from './keep-clear.js';
import { bandBesideKept } from './kept-band.js';
import { spreadOf, withKept } from './kept-parts.js';
import { mannerAt } from './manner.js';
import { type Answers, either, Memory } from './memory.js';
import { type Beside, besideNeighbors } from './neighbors.js';
import { bandBeside, bandIn, type Room, roomAlong, SHARE_OF_DISC } from './reach.js';
import { type Arc, arcRound, roundRadius } from './round-corner.js';
import { type Rows, rowsOf, unitsOf, wholeReach } from './rows.js';
import { isSame } from './same.js';
import type { EndRules, TightPart } from './spans.js';
import { fromSeam, type Rounding, toSeam, type Walk, walkOutline, walkSeam } from './walk.js';
import { SHORTEST_WAVE } from './wave-counts.js';

/** Corners sharper than this are broken: the treatment finishes there and starts anew. */
const BREAK_TURN = (120 * Math.PI) / 180 + 1e-6;
/** Sizes are made smaller in steps of this factor. */
export const NARROWING = 0.85;
/** A treatment pressed below this share of its reach is no longer itself: the part is left bare. */
export const NARROW_SHARE = 0.5;

/** What of a line no size changes. */
export interface Way {
  readonly ask: LineAsk;
  readonly walk: Walk;
  readonly rows: Rows;
  readonly room: Room | null;
  /** what its neighbors leave it */
  readonly beside: Beside | null;
  /** what areas that are kept clear leave it */
  readonly kept: Kept | null;
}

/** A line with the band its treatment gets. */
export interface Line extends Way {
  readonly band: Band;
  readonly scale: number;
  /** parts where even this size would be pressed below half its width */
  readonly tight: readonly TightPart[];
}

/** Answers which treatment a line of the block has, if any. */
export type Lines = Pick<ReadonlyMap<number | 'outline', Line>, 'get' | 'has'>;

/**
 * The ways of all lines, each with the room beside itself and beside the others.
 *
 * @param changed asks that are others than last time
 */
export function waysOf(
  map: SeamMap,
  asks: readonly LineAsk[],
  gap: number,
  changed: readonly number[] = [],
  memory: Memory = new Memory(),
): Answers<Way> {
  const lines = memory.each('walk', asks.length, changed, (l, last: OwnWay | undefined): OwnWay => {
    const ask = asks[l];
    const found = walkOf(map, ask);
    const walk = last && isSame(found, last.walk) ? last.walk : found;
    const rows = rowsOf(ask, walk.reverse);
    const reach = wantedReach(ask, walk, rows, 1);
    const isAsWide = last !== undefined && walk === last.walk && isSame(reach, last.reach);
    const room = isAsWide ? last.room : roomAlong(walk.guide, Math.max(reach.left, reach.right), gap);
    const kept = besideKept(walk.guide, ask.keepClear ?? [], reach, spreadOf(rows), gap);
    return { ask, walk, rows, reach: isAsWide ? last.reach : reach, room, kept };
  });
  const beside = besideNeighbors(map, lines, gap, memory);
  return memory.each('way', asks.length, either(lines.changed, beside.changed), (l): Way => {
    const { ask, walk, rows, room, kept } = lines.of[l];
    return { ask, walk, rows, room, kept, beside: beside.of[l] };
  });
}

/** A way before its neighbors are looked at. */
interface OwnWay extends Omit<Way, 'beside'> {
  readonly reach: Reach;
}

/** Reach to both hands of the walk, seen from the seam. */
function wantedReach(ask: LineAsk, walk: Walk, rows: Rows, scale: number): Reach {
  const reach = wholeReach(rows, scale, ask.sized.repeat * scale);
  return shifted(reach, walk.reverse ? -ask.offset : ask.offset);
}

/**
 * A line at a scale, or at the smaller one that its tightest place takes at half its reach or more. Where not even the
 * smallest would pass by what is kept clear, it is cut off there and keeps its size.
 */
export function bandedLine(way: Way, wanted: number, gap: number): Line {
  const { ask, walk, rows, room, beside, kept } = way;
  let cutOff: Line | null = null;
  for (let scale = wanted; ; scale = Math.max(ask.sized.least, scale * NARROWING)) {
    const reach = wantedReach(ask, walk, rows, scale);
    const bend = bandIn(room, walk.guide, reach, gap);
    const shared = beside ? narrowerBand(bend, bandBeside(beside, walk.guide, reach)) : bend;
    const tight = tightParts(shared, reach).map((part) => ({
      ...part,
      beside: tightParts(bend, reach).every((own) => own.to < part.from || own.from > part.to),
      kept: null,
    }));
    const clear = kept && bandBesideKept(kept, walk.guide, reach, NARROW_SHARE);
    const line: Line = {
      ...way,
      band: clear ? narrowerBand(shared, clear.band) : shared,
      scale,
      tight: clear ? withKept(tight, clear.cut, way) : tight,
    };
    if (tight.length === 0) {
      if (!clear || clear.cut.every(({ covered }) => covered)) return line;
      cutOff ??= line;
    }
    if (scale <= ask.sized.least + 1e-9) return cutOff ?? line;
  }
}

/** Where a band is narrower than half of what was wanted. */
function tightParts(band: Band, wanted: Reach): { from: number; to: number }[] {
  const isTight = (i: number) =>
    band.left[i] < NARROW_SHARE * wanted.left || band.right[i] < NARROW_SHARE * wanted.right;
  const parts: { from: number; to: number }[] = [];
  for (let i = 0; i < band.u.length; i++) {
    if (!isTight(i)) continue;
    const from = band.u[Math.max(0, i - 1)];
    while (i + 1 < band.u.length && isTight(i + 1)) i++;
    const to = band.u[Math.min(band.u.length - 1, i + 1)];
    const before = parts[parts.length - 1];
    if (before && before.to >= from) before.to = to;
    else parts.push({ from, to });
  }
  return parts;
}

function walkOf(map: SeamMap, ask: LineAsk): Walk {
  const at = (junction: number) => map.junctions[junction].at;
  const rounding = roundingFor(ask);
  if (ask.seam === 'outline') {
    const outline = map.outline!;
    return walkOutline(outline, ringStart(outline.corners, []), rounding);
  }
  const seam = map.seams[ask.seam - 1];
  const broken = seam.crossings.filter(({ junction }) => {
    const { through } = map.junctions[junction];
    return through !== null && through !== seam.id;
  });
  const start = seam.closed ? ringStart(seam.corners, broken) : 0;
  return walkSeam(seam, ask.reverse, start, at, rounding);
}

/**
 * A stitch that goes round its corners does so on the widest arc that still covers the corner of the seam. Where every arc
 * would leave that bare it is broken instead, unless the maker has it go round. Kinks too slight for
 * corners are gone round by every stitch that they would press. Waves turn at the corner itself, whatever goes along them:
 * with whole waves on both sides they meet in it; where a side is too short for one they go round.
 */
function roundingFor(ask: LineAsk): Rounding {
  const rows = rowsOf(ask, ask.reverse);
  const reach = wholeReach(rows, 1, ask.sized.repeat);
  const widest = Math.max(reach.left, reach.right);
  const wave = ask.waves ? SHORTEST_WAVE * ask.waves.length : Infinity;
  const offset = ask.reverse ? -ask.offset : ask.offset;
  const arcs = new Map<number, Arc>();
  const arcAt = (turn: number): Arc => {
    const known = arcs.get(turn);
    if (known) return known;
    const arc = ask.waves
      ? { radius: roundRadius(reach, turn), leavesBare: false }
      : arcRound(rows, reach, offset, turn);
    arcs.set(turn, arc);
    return arc;
  };
  // a kink that fairing leaves too tight for the full reach is no corner to turn, whatever the stitch
  const isTightKink = (turn: number) =>
    turn <= CORNER_TURN && FAIRING / Math.tan(turn / 4) / Math.tan(turn / 2) < widest / SHARE_OF_DISC;
  return {
    radius: (turn) => (Math.abs(turn) > CORNER_TURN ? arcAt(turn).radius : roundRadius(reach, turn)),
    isRounded: (turn, side) =>
      isTightKink(Math.abs(turn)) ||
      (ask.sized.stitch.corner === 'round' &&
        Math.abs(turn) > CORNER_TURN &&
        Math.abs(turn) <= BREAK_TURN &&
        side < wave &&
        (ask.keepsRound || !arcAt(turn).leavesBare)),
    // as far back as a treatment may have to end from one as wide that it meets at a right angle
    atEnds: 2 * widest,
  };
}

/** A ring is walked from where it is broken, else from a corner, so that no stretch runs across its start. */
function ringStart(corners: readonly Corner[], breaks: readonly { readonly u: number }[]): number {
  const sharp = corners.find((corner) => Math.abs(corner.turn) > BREAK_TURN);
  return breaks[0]?.u ?? sharp?.u ?? corners[0]?.u ?? 0;
}

/** What decides the ends of one line, given all lines. */
export function endRules(map: SeamMap, lines: Lines, line: Line, rules: FitRules): EndRules {
  return {
    map,
    reach: (arm) => armReach(lines, arm),
    manner: (through, u) => (through !== null && line.ask.shortOf.has(through) ? 'short' : mannerOf(line, u)),
    gap: rules.gap,
    outline: rules.outline,
    dressed: (seam) => lines.has(seam),
    ownAt: (u) => reachAt(line.band, u),
    tight: line.tight,
    guideOf: (seam) => lines.get(seam)?.walk.guide ?? null,
    breaksAt: (turn) => breaksAt(line.ask, turn),
    shareInCorner: (u) => (mannerOf(line, u) === 'tuck' ? shareInCorner(line) : null),
    linked: () => isLinked(line),
  };
}

/** How a line ends at a place, u of its walk. */
export const mannerOf = ({ ask, walk }: Pick<Line, 'ask' | 'walk'>, u: number): Manner =>
  mannerAt(ask.manner, toSeam(walk, u) / walk.seamLength);

/**
 * Whether a treatment finishes at a corner of its walk and starts anew, radians: one that goes round has there no corners but
 * those it could not round.
 */
const breaksAt = ({ sized, waves }: LineAsk, turn: number): boolean =>
  Math.abs(turn) > BREAK_TURN ||
  sized.stitch.corner === 'break' ||
  (sized.stitch.corner === 'round' && !waves);

/** Arms may become this short in the point of a corner that is broken; figures that keep their shape end clear of it. */
const ARMS_IN_CORNER = 0.2;

function shareInCorner({ rows, scale }: Line): number | null {
  const units = unitsOf(rows, scale, rows.sized.repeat * scale);
  const keepsShape = units.some(({ legs }) => legs.some(({ bends }) => !bends));
  return keepsShape || rows.accents.length > 0 ? null : ARMS_IN_CORNER;
}

/** Whether all rows of a line are loops that hang together, each leading from one unit to the next. */
const isLinked = ({ rows, scale }: Line): boolean =>
  unitsOf(rows, scale, rows.sized.repeat * scale).every(({ legs, joins }) =>
    joins.some(([a, b]) =>
      legs.some(
        ({ kind, from, to }) =>
          kind === 'loop' && Math.min(from, to) === Math.min(a, b) && Math.max(from, to) === Math.max(a, b),
      ),
    ),
  );

/** Reach of the treatment on an arm, as seen walking away from the junction. */
function armReach(lines: Lines, arm: Arm): { left: number; right: number } {
  const line = lines.get(arm.seam);
  if (!line) return { left: 0, right: 0 };
  const reach = reachAt(line.band, fromSeam(line.walk, arm.u));
  return (arm.sense === 1) !== line.walk.reverse ? reach : { left: reach.right, right: reach.left };
}
