import { type Boundary, endsPlaced } from './boundary.js';

/**
 * Where a trail may begin and end: in the first unit and the last; so, but at the hand's first leg and its last; anywhere;
 * or where it began.
 */
export type Ends = 'through' | 'ordered' | 'anywhere' | 'closed';

/** Whether a trail with such ends begins in the first unit and ends in the last. */
export const goesThrough = (ends: Ends): boolean => ends === 'through' || ends === 'ordered';

/** A trail has two ends or, closed, none. */
export function isFinal(state: Boundary, ends: Ends): boolean {
  return goesThrough(ends) ? endsPlaced(state) === 2 : endsPlaced(state) !== 1;
}
