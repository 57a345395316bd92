import { type Finding, lineName } from '../finding.js';
import type { SeamFit } from '../fit/fit.js';

/** Codes of findings that say why a line may have nothing on it. */
const REASONS: ReadonlySet<string> = new Set([
  'too-short',
  'tight-bend',
  'close-beside',
  'stub',
  'overshoot',
  'outside-outline',
]);

/** Lines of which nothing is left to sew, where no finding has said why yet: their ends were cut away. */
export function nothingLeft(fits: readonly SeamFit[], said: readonly Finding[]): Finding[] {
  const named = new Set(said.filter(({ code }) => REASONS.has(code)).map(({ seam }) => seam));
  return fits
    .filter(({ seam, stretches }) => stretches.length === 0 && !named.has(seam))
    .map(({ seam, stitch }) => ({
      level: 'warning',
      code: 'nothing-left',
      message:
        `${lineName(seam)}: nothing of its ${stitch} is left between the treatments at its ends; ` +
        'a smaller stitch, or leaving it bare, would do',
      seam,
    }));
}

/** Where no way through the legs keeps the order of the hand, the needle goes the shortest way instead. */
export function handOrderLost(seam: number | 'outline', title: string): Finding {
  return {
    level: 'note',
    code: 'hand-order',
    message:
      `${lineName(seam)}: no way of the needle through ${title.toLowerCase()} keeps the order in which a hand works ` +
      'it, so some threads may cross the other way; another number of passes may allow it',
    seam,
  };
}
