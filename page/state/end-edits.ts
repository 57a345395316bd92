import type { Dressing, Ends, Manner } from '../../src/formats/dressing.js';
import type { Line } from '../core/messages.js';
import { withTreatment } from './edits.js';

/** What is said of a line's start and of its end; null is as the block. */
export const bothEnds = (ends: Ends): readonly [Manner | null, Manner | null] =>
  ends === null || typeof ends === 'string' ? [ends, ends] : ends;

/** One end of a line is made in a manner of its own; two that are alike are said once. */
export function withEnd(dressing: Dressing, line: Line, which: number, manner: Manner | null): Dressing {
  return withTreatment(dressing, line, (treatment) => {
    const [start, end] = bothEnds(treatment.ends).map((was, k) => (k === which ? manner : was));
    return { ...treatment, ends: start === end ? start : [start, end] };
  });
}
