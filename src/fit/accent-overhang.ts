import type { Unit } from '../stitches/stitch.js';
import type { AccentAsk } from './accents.js';
import { followerRow } from './followers.js';
import { extentOf, type Rows } from './rows.js';
import { closesOnSeat } from './seats.js';
import type { UnitRun } from './unit-places.js';

/** Figures that may reach furthest past an end are among this many next to it: graded ones grow. */
const NEXT_TO_END = 3;

/**
 * How far the accents of all rows reach past both ends of their repeats, mm; 0 where none does.
 *
 * @param runs what the first row got, one behind another
 */
export function accentOverhang(
  rows: Rows,
  scale: number,
  runs: readonly UnitRun[],
): { start: number; end: number } {
  const [first, last] = [runs[0], runs[runs.length - 1]];
  const begins = first.from;
  const ends = last.from + last.count * last.length;
  let [start, end] = [0, 0];
  for (const accent of rows.accents) {
    const chains =
      accent.row === 0
        ? [runs]
        : followerRow(runs, rows.sized.glide, false, rows.followers[accent.row - 1], scale).chains;
    const figures = accent.figures.map((figure) => aroundSeat(figure.build(scale), accent));
    for (const chain of chains) {
      const seats = seatsOf(chain, accent.seat);
      const chosen = seats.filter((_, k) => k >= accent.from && (k - accent.from) % accent.every === 0);
      chosen.forEach((u, k) => {
        if (k >= NEXT_TO_END && k < chosen.length - NEXT_TO_END) return;
        const around = figures[k % figures.length];
        start = Math.max(start, begins - u + around);
        end = Math.max(end, u + around - ends);
      });
    }
  }
  return { start, end };
}

/** Where the seats of one name lie along the line. */
function seatsOf(chain: readonly UnitRun[], name: string): number[] {
  const along = chain.flatMap(({ unit, count, from, length }) => {
    const seat = unit.seats.find((one) => one.name === name);
    return seat ? Array.from({ length: count }, (_, k) => from + (k + seat.u / unit.length) * length) : [];
  });
  const last = chain[chain.length - 1];
  const { unit, count, from, length } = last;
  if (closesOnSeat(unit, name)) {
    const { u } = unit.seats.find((one) => one.name === name)!;
    along.push(from + (count + u / unit.length) * length);
  }
  return along;
}

/** How far a figure reaches along the line from its seat, whichever hand it is turned to. */
function aroundSeat(figure: Unit, accent: AccentAsk): number {
  const { start, end } = figure.overhang;
  return accent.turn === 0 ? Math.max(start, end) : extentOf(figure, accent).up;
}
