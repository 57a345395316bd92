import type { Block } from '../../src/block/block.js';
import type { BlockSource, Dressing } from '../../src/formats/dressing.js';
import { hasWishes, withoutWishes } from './meetings.js';
import { renumbered } from './renumber.js';
import { wishesCarried } from './wishes.js';

/**
 * The dressing once its block is read in another way: who runs through, what is joined or split, which ends meet.
 * @param source how it is read now
 */
export async function reread(
  dressing: Dressing,
  source: BlockSource,
  blockOf: (source: BlockSource) => Promise<Block>,
): Promise<Dressing> {
  const { map: from } = await blockOf(dressing.block);
  const next = source.snap === dressing.block.snap ? source : await counted(dressing.block, source, blockOf);
  const { map: to } = await blockOf(next);
  return renumbered({ ...dressing, block: next }, from, to);
}

/** Other ends meet: words on junctions count the seams as they are then. */
async function counted(
  was: BlockSource,
  source: BlockSource,
  blockOf: (source: BlockSource) => Promise<Block>,
): Promise<BlockSource> {
  if (!hasWishes(source)) return source;
  const [from, to] = await Promise.all(
    [was, source].map(async (one) => (await blockOf(withoutWishes(one))).map),
  );
  return {
    ...source,
    ...wishesCarried(source, from, to, { place: (at) => at, seam: (reference) => reference }),
  };
}
