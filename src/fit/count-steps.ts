import type { Rows } from './rows.js';

/** What half-repeats of the first row must come to, so that every row of a treatment comes out whole. */
export interface CountSteps {
  /** on every stretch a multiple of so many, for the first row by itself */
  readonly own: number;
  /** the same, so that what follows it leaves nothing of a stretch over */
  readonly filling: number;
  /** all round a ring: what alternates hands ends on the hand it did not start with */
  readonly ring: number;
}

/**
 * A row that follows at `times` repeats for each of the first row has times as many half-repeats: a whole number of them,
 * and an even one where its stitch allows no halves. As `times` is 1/2, 1 or 2, the largest demand holds all others.
 */
export function countSteps({ sized, followers }: Rows): CountSteps {
  const unit = (halves: boolean) => (halves ? 1 : 2);
  const own = unit(sized.stitch.halves);
  const whole = followers.map((row) => unit(row.sized.stitch.halves) / row.times);
  const round = followers.map(({ times }) => 2 / times);
  return { own, filling: Math.max(own, ...whole), ring: Math.max(2, ...round) };
}
