/**
 * Where a trail may begin and end: in the first unit and the last; so, but at the hand's first leg and its last; anywhere;
 * or where it began.
 */
export type Ends = 'through' | 'ordered' | 'anywhere' | 'closed';

/** Whether a trail with such ends begins in the first unit and ends in the last. */
export const goesThrough = (ends: Ends): boolean => ends === 'through' || ends === 'ordered';
