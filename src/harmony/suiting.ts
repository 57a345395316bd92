import type { Offer } from './offer.js';
import type { SeamFacts } from './seam-facts.js';

/** How an offer suits one seam by itself: at which scale, how wide it then is, and what it costs. */
export interface Suit {
  readonly scale: number;
  readonly width: number;
  readonly cost: number;
}

/** Fewer repeats than this show no rhythm. Common practice. */
const RHYTHM = 4;
/** What a wrong width costs for each factor e, squared, and a missing repeat, squared. */
const WRONG_WIDTH = 4;
const MISSING_REPEAT = 0.15;
/** Families that crazy patchwork is known for, and those that are too slight or too solid to stand alone on a seam. */
const KNOWN = new Set(['feather', 'herringbone', 'buttonhole', 'fly']);
const SLIGHT = new Set(['line', 'knot', 'satin']);
const UNFAMILIAR = 0.4;
const TOO_SLIGHT = 1.4;
/** Flowers crowd a short seam, mm. */
const SHORT = 35;
const CROWDED = 0.5;

/** Whether at least two repeats of it, at its smallest, lie on the seam. */
export const canBeWorked = ({ repeat, least }: Offer, { length }: SeamFacts): boolean =>
  length >= 2 * repeat * least;

export function suit(offer: Offer, { length, wanted }: SeamFacts): Suit {
  const scale = toStep(Math.min(offer.most, Math.max(offer.least, wanted / offer.width)), offer);
  const width = offer.width * scale;
  const missing = Math.max(0, RHYTHM - length / (offer.repeat * scale));
  return {
    scale,
    width,
    cost:
      WRONG_WIDTH * Math.log(width / wanted) ** 2 +
      MISSING_REPEAT * missing ** 2 +
      (KNOWN.has(offer.family) ? 0 : SLIGHT.has(offer.family) ? TOO_SLIGHT : UNFAMILIAR) +
      (offer.accents.length > 0 && length < SHORT ? CROWDED : 0),
  };
}

/** Sizes go in steps of a twentieth: what is nearly the usual size is the usual size. */
const toStep = (scale: number, { least, most }: Offer): number =>
  Math.min(most, Math.max(least, Math.round(scale * 20) / 20));
