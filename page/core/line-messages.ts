import type { BlockSource, Dressing } from '../../src/formats/dressing.js';
import type { Line } from './messages.js';

/** A junction that a line comes to. Numbers of seams are those that they have now. */
export interface MeetingPlace {
  /** on the block as drawn, mm: how a dressing tells of it */
  readonly at: readonly [number, number];
  /** on the block as it lies, mm */
  readonly placed: readonly [number, number];
  /** the seams that leave it, and which way each does, a unit vector on the block as it lies */
  readonly arms: readonly { readonly seam: number; readonly toward: readonly [number, number] }[];
  /** how far along the line it is, as a share of its length */
  readonly along: number;
  /** this seam, as it is counted when the maker says nothing; where it has two arms there, the first */
  readonly own: number;
  /** the other seams there */
  readonly others: readonly number[];
  /** the one that runs through */
  readonly through: number | null;
  /** who can run through by the maker's word */
  readonly runsOn: readonly Wishable[];
  /** seams that can be made one line with this one */
  readonly joins: readonly Wishable[];
  /** this line, where it runs on and can be ended; null where it ends already */
  readonly split: Wishable | null;
  /** the maker's word that is in force */
  readonly said: {
    readonly through: number | null;
    readonly join: readonly [number, number] | null;
    readonly split: number | null;
  };
}

/** A seam as it is called now, and the number that it has when the maker says nothing of any junction. */
export interface Wishable {
  readonly now: number;
  readonly plain: number;
}

/** What is asked of single lines. */
export interface LineAsks {
  /** where a line meets others, from its start */
  meetings: { ask: { dressing: Dressing; line: Line }; answer: readonly MeetingPlace[] };
  /** the dressing once its block is read in another way */
  reread: { ask: { dressing: Dressing; block: BlockSource }; answer: Dressing };
}
