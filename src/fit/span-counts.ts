import { accentOverhang } from './accent-overhang.js';
import { countSteps } from './count-steps.js';
import { bestCounts } from './counts.js';
import type { SpanQuestion } from './fit-span.js';
import { wholeOverhang } from './rows.js';
import type { Span, SpanEnd } from './spans.js';
import type { UnitRun } from './unit-places.js';

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
  readonly overhang: Overhang;
  /** bare length left evenly at both ends, mm each */
  readonly margin: number;
}

/** How much of a span's two ends repeats leave to what reaches past them. */
interface Overhang {
  readonly start: number;
  readonly end: number;
}

/**
 * Counts that leave nothing over of any row, at the largest size at which there are such; else those of the first row.
 * Where nothing may lie past an end, accents have room there, too, unless that would take a smaller size: then those that
 * have none are left out.
 */
export function chooseCounts(question: SpanQuestion): Choice | null {
  const { own, filling } = countSteps(question.rows);
  const filled = filling > own ? countsBy(question, filling) : null;
  const bare = filled?.margin === 0 ? filled : countsBy(question, own);
  if (!bare || !question.within || question.span.ring || bare.margin > 0) return bare;
  const unit = bare === filled ? filling : own;
  const adorned = question.rows.accents.length > 0 ? settled(question, bare, unit, true) : null;
  return adorned ?? settled(question, bare, unit, false) ?? bare;
}

/** Repeats change a little as they leave room for what reaches past them, and that with them: so often it is looked at anew. */
const SETTLING = 4;
/** Room at an end that is missing by less is not missed, mm. */
const SAME_ROOM = 0.01;

/** The same size counted anew, with room at its ends for what its very repeats need there; null where none fit then. */
function settled(question: SpanQuestion, choice: Choice, unit: number, accents: boolean): Choice | null {
  const { span } = question;
  let { overhang, lengths, halfRepeats } = choice;
  for (let round = 0; round < SETTLING; round++) {
    const wanted = pastRepeats(question, { ...choice, overhang, lengths, halfRepeats }, accents);
    const isMet =
      Math.abs(wanted.start - overhang.start) < SAME_ROOM && Math.abs(wanted.end - overhang.end) < SAME_ROOM;
    if (isMet) break;
    overhang = wanted;
    lengths = stretchLengths(span, overhang);
    if (lengths.some((length) => length <= 0)) return null;
    const counts = countsAt(question, unit, choice.scale, lengths);
    if (!counts) return null;
    halfRepeats = counts;
  }
  return { ...choice, overhang, lengths, halfRepeats };
}

/** What reaches past the repeats of a choice. */
function pastRepeats(question: SpanQuestion, choice: Choice, accents: boolean): Overhang {
  const { rows, span } = question;
  const { scale, lengths, halfRepeats } = choice;
  const last = lengths.length - 1;
  const repeat = (i: number) => (2 * lengths[i]) / halfRepeats[i];
  const start = wholeOverhang(rows, scale, repeat(0)).start;
  const end = wholeOverhang(rows, scale, repeat(last)).end;
  if (!accents) return { start, end };
  const past = accentOverhang(rows, scale, runsOf(question, choice));
  return {
    start: isOpen(span.start) ? Math.max(start, past.start) : start,
    end: isOpen(span.end) ? Math.max(end, past.end) : end,
  };
}

/** Where accents are not told from other lines whether they may stand. */
const isOpen = ({ bound, figureBound }: SpanEnd): boolean => !bound && !figureBound;

/** The repeats of a choice, one run for each stretch between corners. */
export function runsOf({ span, rows }: SpanQuestion, choice: Choice): UnitRun[] {
  const { scale, lengths, halfRepeats, overhang, margin } = choice;
  const unitsPer = rows.sized.glide ? 1 : 0.5;
  let from = span.ring ? 0 : span.start.at + span.start.setback + overhang.start + margin;
  return lengths.map((length, i): UnitRun => {
    const unit = rows.sized.build(scale, (2 * length) / halfRepeats[i]);
    const count = halfRepeats[i] * unitsPer;
    const run = { unit, count, from, length: length / count };
    from += length;
    return run;
  });
}

/** @param unit half-repeats that every stretch holds a multiple of */
function countsBy(question: SpanQuestion, unit: number): Choice | null {
  const { span, rows } = question;
  const { sized } = rows;
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
    const halfRepeats = countsAt(question, unit, scale, lengths);
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

/** The best counts at one size on stretches of these lengths; null where none is within the stretch allowed. */
function countsAt(
  { span, rows }: SpanQuestion,
  unit: number,
  scale: number,
  lengths: readonly number[],
): readonly number[] | null {
  const wanted = rows.sized.repeat * scale;
  const { own, filling, ring } = countSteps(rows);
  const counts = (steps: readonly number[], ring: number) =>
    bestCounts({ lengths, wanted, steps, ring: span.ring ? ring : null, shares: SHARES });
  const steps = lengths.map((length) => (takesWhole(length, wanted, filling) ? filling : own));
  if (unit === filling) return counts(steps, ring);
  return counts(steps, 2) ?? counts(new Array(lengths.length).fill(own), 2);
}

/** Whether some count of repeats, a multiple of `step` half-repeats, fills a length within the stretch allowed. */
export function takesWhole(length: number, wanted: number, step: number): boolean {
  const most = Math.floor((2 * length) / (wanted * SHORTEST_SHARE) / step + 1e-9) * step;
  return most >= step && (2 * length) / most <= wanted * LONGEST_SHARE * (1 + 1e-9);
}

export function stretchLengths(span: Span, overhang: Overhang): number[] {
  const bounds = [
    span.start.at + span.start.setback + overhang.start,
    ...span.corners.map((corner) => corner.u),
    span.end.at - span.end.setback - overhang.end,
  ];
  return bounds.slice(1).map((u, i) => u - bounds[i]);
}
