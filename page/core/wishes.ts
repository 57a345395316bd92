import type { SeamMap } from '../../src/block/seam-map.js';
import { referenceTo, seamOf } from '../../src/fit/seam-reference.js';
import type { BlockSource, SeamReference } from '../../src/formats/dressing.js';

/** How places and seams go along when the lines of a block are moved. */
export interface Carried {
  readonly place: (at: readonly [number, number]) => readonly [number, number];
  /** null when its line is gone */
  readonly seam: (reference: SeamReference) => SeamReference | null;
}

/**
 * What the maker said of junctions, once the lines of the block have moved: each word goes along with its junction and its
 * seams, which are counted anew. A word on a seam that is gone is gone with it.
 *
 * @param from the map before, as it is when the maker says nothing; to: the map now, likewise
 */
export function wishesCarried(
  source: BlockSource,
  from: SeamMap,
  to: SeamMap,
  { place, seam }: Carried,
): Pick<BlockSource, 'through' | 'join' | 'split'> {
  const number = (id: number): number | null => {
    const known = from.seams[id - 1];
    const carried = known && seam(referenceTo(known));
    const found = carried ? seamOf(to, carried) : null;
    return found === null || found === 'outline' ? null : found.id;
  };
  const ofOne = (all: BlockSource['through']) =>
    all.flatMap((one) => {
      const id = number(one.seam);
      return id === null ? [] : [{ at: tidy(place(one.at)), seam: id }];
    });
  const { through, join, split } = source;
  const joined = join?.flatMap(({ at, seams }) => {
    const [a, b] = [number(seams[0]), number(seams[1])];
    return a === null || b === null ? [] : [{ at: tidy(place(at)), seams: [a, b] as const }];
  });
  return {
    through: ofOne(through),
    ...(joined && { join: joined }),
    ...(split && { split: ofOne(split) }),
  };
}

const tidy = ([x, y]: readonly [number, number]): [number, number] => [
  Math.round(x * 1000) / 1000,
  Math.round(y * 1000) / 1000,
];
