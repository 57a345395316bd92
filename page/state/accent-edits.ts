import type { Accent, Dressing } from '../../src/formats/dressing.js';
import { DEFAULT_PASSES } from '../../src/harmony/passes.js';
import type { Figure, Line } from '../core/messages.js';
import { withTreatment } from './edits.js';

/** Changes of the accents on a line, counted from 0. */

export const withAccent = (
  dressing: Dressing,
  line: Line,
  k: number,
  edit: (accent: Accent) => Accent,
): Dressing =>
  withTreatment(dressing, line, (treatment) => ({
    ...treatment,
    accents: treatment.accents?.map((one, i) => (i === k ? edit(one) : one)),
  }));

export const withoutAccent = (dressing: Dressing, line: Line, k: number): Dressing =>
  withTreatment(dressing, line, ({ accents, ...treatment }) => {
    const left = (accents ?? []).filter((_, i) => i !== k);
    return left.length > 0 ? { ...treatment, accents: left } : treatment;
  });

/** One more accent on every seat of a kind, in another thread than the first row, where there is one. */
export const withOneMoreAccent = (dressing: Dressing, line: Line, seat: string, figure: Figure): Dressing =>
  withTreatment(dressing, line, (treatment) => {
    const [first] = treatment.rows;
    const blank: Accent = {
      row: 0,
      seat,
      ornament: null,
      parameters: {},
      thread: (first.thread + 1) % Math.max(1, dressing.threads.length),
      passes: DEFAULT_PASSES,
    };
    return {
      ...treatment,
      accents: [...(treatment.accents ?? []), withFigureOn(blank, figure, dressing.threads.length)],
    };
  });

/** What an accent is: a figure that is sewn. It begins at its usual size. */
export function withFigureOn(accent: Accent, figure: Figure, spools: number): Accent {
  const { byHand: _, graded: __, moreThreads: ___, ...rest } = accent;
  const more = Array.from(
    { length: figure.threads - 1 },
    (_one, k) => (accent.thread + k + 1) % Math.max(1, spools),
  );
  return {
    ...rest,
    ornament: figure.name,
    parameters: { size: figure.size.default },
    ...(more.length > 0 && { moreThreads: more }),
  };
}

/** A common bead, and what is larger, mm across: common practice. */
const BY_HAND: Readonly<Record<string, number>> = { bead: 3, button: 6, charm: 8 };
export const HAND_THINGS = Object.keys(BY_HAND);

/** What an accent is: something that is put on by hand afterwards. */
export function withHandThing(accent: Accent, thing: string): Accent {
  const { graded: _, moreThreads: __, ...rest } = accent;
  return { ...rest, ornament: null, byHand: thing, parameters: { size: BY_HAND[thing] ?? 3 } };
}

/** This accent and a copy of it share the seats in turn: each sits on every second one. */
export const withAlternate = (dressing: Dressing, line: Line, k: number): Dressing =>
  withTreatment(dressing, line, (treatment) => {
    const accents = [...(treatment.accents ?? [])];
    const one = accents[k];
    const { every = 1, from = 0 } = one;
    accents.splice(
      k,
      1,
      { ...one, every: 2 * every, from },
      { ...one, every: 2 * every, from: from + every },
    );
    return { ...treatment, accents };
  });

/** How sizes follow each other from seat to seat, as shares of the whole size. */
export const GRADES = {
  alike: [1],
  turn: [1, 0.7],
  three: [0.6, 0.8, 1],
  wave: [0.6, 0.8, 1, 0.8],
} as const;
export type Grading = keyof typeof GRADES;

/** Sizes that change from seat to seat; none where all are alike. */
export function withGrading(accent: Accent, grading: Grading, { size }: Figure): Accent {
  const { graded: _, ...rest } = accent;
  if (grading === 'alike') return rest;
  const whole = accent.parameters.size ?? size.default;
  const graded = GRADES[grading].map((share) => ({
    size: Math.max(size.min, Math.round(10 * share * whole) / 10),
  }));
  return { ...rest, graded };
}

/** How an accent's sizes follow each other; null where they follow in another way. */
export function gradingOf(accent: Accent, figure: Figure): Grading | null {
  const kinds = Object.keys(GRADES) as Grading[];
  const told = JSON.stringify(accent.graded);
  return kinds.find((kind) => JSON.stringify(withGrading(accent, kind, figure).graded) === told) ?? null;
}

/** What is put on by hand is of these sizes, mm. */
export const HAND_SIZES = { min: 1, max: 20 };
/** How far off its seat an accent is moved at most, mm: the page's own, a dressing takes more. */
export const AWAY = { min: -10, max: 10, step: 0.1 };

/** An accent's whole size; sizes that change from seat to seat go along. */
export function withAccentSize(accent: Accent, size: number, figure: Figure | undefined): Accent {
  const grading = figure && gradingOf(accent, figure);
  const sized = { ...accent, parameters: { ...accent.parameters, size } };
  return grading ? withGrading(sized, grading, figure) : sized;
}
