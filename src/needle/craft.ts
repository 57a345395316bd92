import type { Craft } from './run.js';

/** Width at which sewn thread lies on the cloth, mm, by ticket number. Common practice. */
const LAID: Readonly<Record<string, number>> = {
  'No. 60': 0.25,
  'No. 40': 0.4,
  'No. 30': 0.45,
  'No. 12': 0.65,
};
/** Shortest good stitch on open line work, mm, by ticket number. Common practice. */
const SHORTEST: Readonly<Record<string, number>> = { 'No. 30': 1.2, 'No. 12': 2 };

/** Laid width of a thread, mm; an unknown ticket number counts as No. 40. */
export const threadWidth = (weight: string): number => LAID[weight] ?? LAID['No. 40'];

/**
 * How much larger than in No. 40 a figure has to be in another thread, so that its legs stand as far apart beside the
 * width of the thread: sizes grow with that width, and get no smaller in a finer one. Common practice.
 */
export const largerFor = (weight: string): number => Math.max(1, threadWidth(weight) / LAID['No. 40']);

/** What sewing with a thread asks for: hand-look legs in one stitch up to 7 mm, six piercings a hole on firm cotton. */
export function craftFor(weight: string): Craft {
  return {
    threadWidth: threadWidth(weight),
    longest: 7,
    shortest: SHORTEST[weight] ?? 0.8,
    holeLimit: 6,
    spread: 0.22,
  };
}
