import { countSteps } from './count-steps.js';
import { bestCounts } from './counts.js';
import type { SpanQuestion } from './fit-span.js';
import { wholeOverhang } from './rows.js';
import type { Span } from './spans.js';

/** Repeats may be made this much shorter or longer than asked before another remedy is looked for. */
export const SHORTEST_SHARE = 0.8;
export const LONGEST_SHARE = 1.25;
const SHARES = [SHORTEST_SHARE, LONGEST_SHARE] as const;
/** Sizes tried between the one asked for and the least good one. */
const SIZE_STEPS = 24;

/** Counts on one span, and the size they are for. */
export interface Choice {
  readonly scale: number;
  readonly lengths: readonly number[];
  readonly halfRepeats: readonly number[];
  readonly overhang: { readonly start: number; readonly end: number };
  /** bare length left evenly at both ends, mm each */
  readonly margin: number;
}

/** Counts that leave nothing over of any row, at the largest size at which there are such; else those of the first row. */
export function chooseCounts(question: SpanQuestion): Choice | null {
  const { own, filling } = countSteps(question.rows);
  const filled = filling > own ? countsBy(question, filling) : null;
  return filled?.margin === 0 ? filled : countsBy(question, own);
}

/** @param unit half-repeats that every stretch holds a multiple of */
function countsBy(question: SpanQuestion, unit: number): Choice | null {
  const { span, rows } = question;
  const { sized } = rows;
  const { own, filling, ring } = countSteps(rows);
  const least = Math.min(sized.least, question.scale);
  let closest: Choice | null = null;
  for (let step = 0; step <= SIZE_STEPS; step++) {
    const scale = question.scale * (least / question.scale) ** (step / SIZE_STEPS);
    const wanted = sized.repeat * scale;
    const overhang = wholeOverhang(rows, scale, wanted);
    const lengths = stretchLengths(span, span.ring ? { start: 0, end: 0 } : overhang);
    const last = step === SIZE_STEPS;
    if (!last && !lengths.every((length) => takesWhole(length, wanted, unit))) continue;
    if (lengths.some((length) => length <= 0)) continue;
    const counts = (steps: readonly number[], ring: number) =>
      bestCounts({ lengths, wanted, steps, ring: span.ring ? ring : null, shares: SHARES });
    const steps = lengths.map((length) => (takesWhole(length, wanted, filling) ? filling : own));
    const halfRepeats =
      unit === filling
        ? counts(steps, ring)
        : (counts(steps, 2) ?? counts(new Array(lengths.length).fill(own), 2));
    if (halfRepeats) return { scale, lengths, halfRepeats, overhang, margin: 0 };
    // One stretch that is only too long for its count can keep even margins, at the least size.
    const whole = Math.floor((2 * lengths[0]) / (wanted * SHORTEST_SHARE) / unit);
    if (last && lengths.length === 1 && !span.ring && whole >= 1) {
      const count = whole * unit;
      const used = (count / 2) * Math.min(wanted * LONGEST_SHARE, (2 * lengths[0]) / count);
      closest = { scale, lengths: [used], halfRepeats: [count], overhang, margin: (lengths[0] - used) / 2 };
    }
  }
  return closest;
}

/** Whether some count of repeats, a multiple of `step` half-repeats, fills a length within the stretch allowed. */
export function takesWhole(length: number, wanted: number, step: number): boolean {
  const most = Math.floor((2 * length) / (wanted * SHORTEST_SHARE) / step + 1e-9) * step;
  return most >= step && (2 * length) / most <= wanted * LONGEST_SHARE * (1 + 1e-9);
}

export function stretchLengths(span: Span, overhang: { start: number; end: number }): number[] {
  const bounds = [
    span.start.at + span.start.setback + overhang.start,
    ...span.corners.map((corner) => corner.u),
    span.end.at - span.end.setback - overhang.end,
  ];
  return bounds.slice(1).map((u, i) => u - bounds[i]);
}
