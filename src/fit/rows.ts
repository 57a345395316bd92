import type { Unit } from '../stitches/stitch.js';
import type { AccentAsk } from './accents.js';
import type { LineAsk } from './ask.js';
import type { Reach } from './band.js';
import type { Uneven } from './by-hand.js';
import type { Follower } from './followers.js';
import { reachOf, type Sized } from './sized.js';
import type { Waves } from './waves.js';

/** All that is worked along one line, seen along its walk. Places across are measured from the first row's line. */
export interface Rows {
  readonly sized: Sized;
  readonly hand: 1 | -1;
  readonly passes: number;
  readonly followers: readonly Follower[];
  readonly accents: readonly AccentAsk[];
  /** width of what is laid along the line and held by the rows, mm; 0 for nothing */
  readonly laid: number;
  readonly uneven?: Uneven;
  /** what the rows are stitched on instead of the line itself */
  readonly waves?: Waves;
}

export function rowsOf(ask: LineAsk, reverse: boolean): Rows {
  const handOf = (side: 'left' | 'right'): 1 | -1 => ((side === 'left') === !reverse ? 1 : -1);
  return {
    sized: ask.sized,
    hand: handOf(ask.side),
    passes: ask.passes,
    followers: ask.followers.map(({ sized, side, passes, offset, times, step, mirrored }) => ({
      sized,
      hand: handOf(side),
      passes,
      beside: (offset - ask.offset) * (reverse ? -1 : 1),
      times,
      step,
      mirrored,
    })),
    accents: ask.accents,
    laid: ask.laid,
    uneven: ask.uneven,
    waves: ask.waves,
  };
}

/** How far all rows, their accents and what is laid reach to both hands, mm, at a scale and a repeat of the first row. */
export function wholeReach(rows: Rows, scale: number, repeat: number): Reach {
  const { left, right } = reachOfRows(rows, scale, repeat);
  const swing = rows.waves ? (rows.waves.height * scale) / 2 : 0;
  return { left: left + swing, right: right + swing };
}

/** The same seen from the line that is stitched on, be it the seam or waves along it. */
export function reachOfRows(rows: Rows, scale: number, repeat: number): Reach {
  const first = rows.sized.build(scale, repeat);
  const own = reachOf(first, rows.sized.glide, rows.hand);
  const astray = rows.uneven?.tips ?? 0;
  const reach = {
    left: Math.max(own.left, rows.laid / 2),
    right: Math.max(own.right, rows.laid / 2),
  };
  const take = (left: number, right: number) => {
    reach.left = Math.max(reach.left, left);
    reach.right = Math.max(reach.right, right);
  };
  const units = unitsOf(rows, scale, repeat);
  rows.followers.forEach(({ sized, hand, beside }, i) => {
    const { left, right } = reachOf(units[i + 1], sized.glide, hand);
    take(left + beside, right - beside);
  });
  for (const accent of rows.accents) {
    const { sized, hand, beside } =
      accent.row === 0 ? { ...rows, beside: 0 } : rows.followers[accent.row - 1];
    const seat =
      accent.seat === CREST ? ON_LINE : units[accent.row].seats.find(({ name }) => name === accent.seat);
    if (!seat) continue;
    const figures = accent.figures.map((figure) => extentOf(figure.build(scale), accent));
    const up = Math.max(...figures.map((figure) => figure.up)) + accent.away * scale;
    const down = Math.max(...figures.map((figure) => figure.down)) - accent.away * scale;
    for (const side of sized.glide || seat === ON_LINE ? [1, -1] : [1]) {
      const v = side * hand * seat.v;
      // up leads away from the line, on the line to the unit's own hand
      const isLeft = v === 0 ? side * hand > 0 : v > 0;
      take(v + beside + (isLeft ? up : down), -v - beside + (isLeft ? down : up));
    }
  }
  return { left: reach.left + astray, right: reach.right + astray };
}

/** The seat on every top of the waves that are stitched on. */
export const CREST = 'crest';
const ON_LINE = { v: 0 };

/** One unit of each row, the first row's first. */
export function unitsOf({ sized, followers }: Rows, scale: number, repeat: number): Unit[] {
  return [
    sized.build(scale, repeat),
    ...followers.map((follower) => follower.sized.build(scale, repeat / follower.times)),
  ];
}

/** How far the rows reach past the ends of their repeats, mm: rows moved along have room there. */
export function wholeOverhang(rows: Rows, scale: number, repeat: number): { start: number; end: number } {
  const units = unitsOf(rows, scale, repeat).filter((_, i) => i === 0 || rows.followers[i - 1].step === 0);
  return {
    start: Math.max(...units.map(({ overhang }) => overhang.start)),
    end: Math.max(...units.map(({ overhang }) => overhang.end)),
  };
}

/** How far a figure reaches from its seat, away from the line and back over it. */
export function extentOf({ reach, overhang }: Unit, { turn }: AccentAsk): { up: number; down: number } {
  if (turn === 0) return { up: reach.left, down: reach.right };
  const around = Math.max(reach.left, reach.right, overhang.start, overhang.end);
  return { up: around, down: around };
}
