import type { Machine } from '../formats/dressing.js';

/** How fast a machine works and how much thread it takes. */
export interface Pace {
  readonly stitchesPerMinute: number;
  /** for threads of No. 12 and heavier, and metallic ones */
  readonly heavyStitchesPerMinute: number;
  readonly trimSeconds: number;
  /** halt, thread change, start */
  readonly changeMinutes: number;
  /** how many threads it holds */
  readonly needles: number;
  /** from one needle to another */
  readonly needleSeconds: number;
  /** needle thread, and bobbin thread, for each mm sewn, as a share of the stitch's length */
  readonly takeUp: number;
  readonly bobbinTakeUp: number;
}

/**
 * Common practice, apart from the thread: a lockstitch (ISO 4915 type 301) takes 2.5 times the length of its seam, needle
 * and bobbin thread together, ideally in equal parts (teaching pages on ISO stitch types, apparelscience.com). So each
 * takes half of that. Embroidery is sewn with the needle thread drawn to the back, so that the bobbin gives somewhat
 * less (common practice): reckoned so, it is never run out of.
 */
export const COMMON_PACE: Pace = {
  stitchesPerMinute: 600,
  heavyStitchesPerMinute: 450,
  trimSeconds: 7,
  changeMinutes: 1.5,
  needles: 1,
  needleSeconds: 8,
  takeUp: 1.25,
  bobbinTakeUp: 1.25,
};

/** The pace of a machine: what is not said of it is as is common. */
export const paceOf = (machine: Machine = {}): Pace => ({ ...COMMON_PACE, ...machine });
