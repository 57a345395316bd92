import type { LineId } from '../block/meetings.js';
import type { SeamMap } from '../block/seam-map.js';
import { resized, seamOf } from '../fit/seam-reference.js';
import type { Dressing, PlacedOrnament, Treatment, Work } from '../formats/dressing.js';
import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { measured, type Offer } from './offer.js';
import { workRethreaded } from './threading.js';

/** mm */
const USUAL_WIDTH = 8;

/** A treatment that stays as it is while the rest of the block is mixed. */
export interface Kept {
  readonly treatment: Treatment;
  /** where it lies on this block; null when its seam is lost */
  readonly line: LineId | null;
  readonly offer: Offer;
}

/**
 * What stays of a dressing: pinned treatments, the outline's, and where only some seams are mixed those of all others. A
 * seam that is pinned to something else now has lost its old one.
 * @param asked the seams that are mixed; all when not given
 */
export function keptTreatments(
  map: SeamMap,
  { treatments }: Dressing,
  pinned: ReadonlyMap<number, Offer>,
  dictionary: Dictionary,
  asked?: readonly number[],
): Kept[] {
  const mixed = asked && new Set<LineId | null>(asked);
  const references = resized(
    map,
    treatments.map(({ seam }) => seam),
  );
  return treatments.flatMap((treatment, t): Kept[] => {
    const seam = seamOf(map, references[t]);
    const line = seam === null || seam === 'outline' ? seam : seam.id;
    if (!treatment.pinned && treatment.seam.id !== 'outline' && (!mixed || mixed.has(line))) return [];
    if (typeof line === 'number' && pinned.has(line)) return [];
    return [{ treatment, line, offer: keptOffer(treatment, dictionary) }];
  });
}

/** Where the seams lie that a dressing leaves bare. */
export const linesLeftBare = (map: SeamMap, { bare = [] }: Dressing): (LineId | null)[] =>
  resized(map, bare).map((reference) => {
    const seam = seamOf(map, reference);
    return seam === null || seam === 'outline' ? seam : seam.id;
  });

/** What it looks like to its neighbors. */
function keptOffer({ rows, accents = [], laid, guide }: Treatment, dictionary: Dictionary): Offer {
  const first = dictionary.stitches.get(rows[0].stitch);
  const work = { rows, accents, laid, guide };
  return {
    name: rows[0].stitch,
    title: first?.title ?? rows[0].stitch,
    stitches: [...new Set(rows.map(({ stitch }) => stitch))],
    family: first?.family ?? '',
    accents: accents.map(({ ornament, byHand }) => ornament ?? byHand ?? ''),
    handwork: false,
    work,
    ...sizeOf(work, dictionary),
    least: 1,
    most: 1,
  };
}

/** Taken to be as wide as most where it cannot be worked: what is wrong with it is told when the block is dressed. */
function sizeOf(work: Work, dictionary: Dictionary): { width: number; repeat: number } {
  try {
    // of which thread it is makes it no wider
    return measured(
      workRethreaded(work, () => 0),
      dictionary,
    );
  } catch (error) {
    if (error instanceof InputError) return { width: USUAL_WIDTH, repeat: USUAL_WIDTH };
    throw error;
  }
}

export const keptOrnaments = ({ ornaments = [] }: Dressing): readonly PlacedOrnament[] =>
  ornaments.filter(({ pinned }) => pinned);
