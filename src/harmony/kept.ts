import type { SeamMap } from '../block/seam-map.js';
import { resized, seamOf } from '../fit/seam-reference.js';
import type { Dressing, PlacedOrnament, Treatment } from '../formats/dressing.js';
import type { Dictionary } from '../stitches/dictionary.js';
import type { LineId } from './meetings.js';
import type { Offer } from './offer.js';

/** A treatment that stays as it is while the rest of the block is mixed. */
export interface Kept {
  readonly treatment: Treatment;
  /** where it lies on this block; null when its seam is lost */
  readonly line: LineId | null;
  readonly offer: Offer;
}

/**
 * What stays of a dressing: pinned treatments and the outline's. A seam that is pinned to something else now has lost
 * its old one.
 */
export function keptTreatments(
  map: SeamMap,
  { treatments }: Dressing,
  pinned: ReadonlyMap<number, Offer>,
  dictionary: Dictionary,
): Kept[] {
  const references = resized(
    map,
    treatments.map(({ seam }) => seam),
  );
  return treatments.flatMap((treatment, t): Kept[] => {
    if (!treatment.pinned && treatment.seam.id !== 'outline') return [];
    const seam = seamOf(map, references[t]);
    const line = seam === null || seam === 'outline' ? seam : seam.id;
    if (typeof line === 'number' && pinned.has(line)) return [];
    return [{ treatment, line, offer: keptOffer(treatment, dictionary) }];
  });
}

/** Where the seams lie that a dressing leaves bare. */
export const bareLines = (map: SeamMap, { bare = [] }: Dressing): (LineId | null)[] =>
  resized(map, bare).map((reference) => {
    const seam = seamOf(map, reference);
    return seam === null || seam === 'outline' ? seam : seam.id;
  });

/** What it looks like to its neighbors; its size is not asked, and what is wrong with it is told when it is worked. */
function keptOffer({ rows, accents = [], laid, guide }: Treatment, { stitches }: Dictionary): Offer {
  const first = stitches.get(rows[0].stitch);
  return {
    name: rows[0].stitch,
    title: first?.title ?? rows[0].stitch,
    stitches: [...new Set(rows.map(({ stitch }) => stitch))],
    family: first?.family ?? '',
    accents: accents.map(({ ornament, byHand }) => ornament ?? byHand ?? ''),
    handwork: false,
    work: { rows, accents, laid, guide },
    width: 1,
    repeat: 1,
    least: 1,
    most: 1,
  };
}

export const keptOrnaments = ({ ornaments = [] }: Dressing): readonly PlacedOrnament[] =>
  ornaments.filter(({ pinned }) => pinned);
