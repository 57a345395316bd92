import type { Treatment } from '../../src/formats/dressing.js';
import { stitchOf } from './line-facts.js';

/** On a guide line accents can sit on the highest points of its waves, whatever the stitch. */
const CREST = 'crest';

/** Where accents can sit on a row. */
export function seatsOf({ rows, guide }: Treatment, row: number): readonly string[] {
  const seats = stitchOf(rows[row]?.stitch ?? '')?.seats ?? [];
  return guide && !seats.includes(CREST) ? [...seats, CREST] : seats;
}

/** "tip" as it stands in a list: "tips" */
export const seatTitle = (seat: string): string => `${seat.replace(/-/g, ' ')}s`;

const NTH = ['every', 'every second', 'every third', 'every fourth', 'every fifth', 'every sixth'];

/** On which seats of a row: every one, every second, ... */
export const everyTitle = (every: number): string => NTH[every - 1] ?? `every ${every}th`;
