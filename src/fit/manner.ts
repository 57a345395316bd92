import type { Ends, Manner } from '../formats/dressing.js';

/**
 * How a line ends where it butts into another. A pair says it of the line's start and of its end, in its own direction: where
 * another line crosses it in between, or it breaks at a corner, the nearer end's manner holds.
 */
export type MannerAsk = Manner | readonly [start: Manner, end: Manner];

/** @param share how far along the line, from 0 at its start to 1 at its end, in its own direction */
export const mannerAt = (manner: MannerAsk, share: number): Manner =>
  typeof manner === 'string' ? manner : manner[share <= 0.5 ? 0 : 1];

/** The manners of a line's start and end. */
export const bothManners = (manner: MannerAsk): readonly [Manner, Manner] =>
  typeof manner === 'string' ? [manner, manner] : manner;

/** Whether it stops short of another at one end at least. */
export const isEverShort = (manner: MannerAsk): boolean => bothManners(manner).includes('short');

/** What a treatment is asked: its own word on each end, and the block's where it has none. */
export function mannerAsked(own: Ends, block: Manner): MannerAsk {
  if (own === null || typeof own === 'string') return own ?? block;
  const [start, end] = [own[0] ?? block, own[1] ?? block];
  return start === end ? start : [start, end];
}
