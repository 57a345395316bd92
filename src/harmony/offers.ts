import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { findIfNamed } from '../stitches/find-named.js';
import { nearestName } from '../stitches/nearest-name.js';
import { type Offer, stitchOffer, treatmentOffer } from './offer.js';

/**
 * All that a library offers for seams: its stitches alone and its saved treatments, but for those that need beads or
 * ribbon, and those of a maker's own that ask for what is not there.
 */
export function offersOf(dictionary: Dictionary): Offer[] {
  const made = [
    ...[...dictionary.stitches.values()].map((stitch) => () => stitchOffer(stitch, dictionary)),
    ...[...dictionary.treatments.values()].map((saved) => () => treatmentOffer(saved, dictionary)),
  ];
  return made.flatMap((make) => {
    try {
      const offer = make();
      return offer.handwork ? [] : [offer];
    } catch (error) {
      if (error instanceof InputError) return [];
      throw error;
    }
  });
}

/**
 * The stitch or else the saved treatment of this name.
 * @throws InputError with the nearest name when there is neither
 */
export function offerNamed(dictionary: Dictionary, wanted: string, where: string): Offer {
  const stitch = findIfNamed(dictionary.stitches, wanted);
  if (stitch) return stitchOffer(stitch, dictionary);
  const saved = findIfNamed(dictionary.treatments, wanted);
  if (saved) return treatmentOffer(saved, dictionary);
  const calls = [...dictionary.stitches.values(), ...dictionary.treatments.values()].flatMap(
    ({ name, title, otherNames }) => [name, title, ...otherNames],
  );
  throw new InputError(
    'unknown-pin',
    where,
    `there is no stitch or treatment "${wanted}"`,
    calls.length ? `did you mean "${nearestName(wanted, calls)}"?` : 'the dictionary has none',
  );
}
