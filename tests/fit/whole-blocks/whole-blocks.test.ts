import { describe, expect, test } from 'vitest';
import { convexBlocks, drawnBlocks, type NamedBlock, voronoiBlocks } from './blocks.js';
import { fitted } from './fitted.js';
import { strays } from './on-claims.js';
import { bareStretches, lumps, overlaps } from './shared-space.js';

/** What is amiss on blocks with random work on every seam, ends made short, and on every second block tucked, too. */
function amiss(blocks: readonly NamedBlock[]) {
  const found = blocks.map((block, i) => {
    const [short, tucked] = fitted(block, 'short', ...(i % 2 ? [] : ['tuck' as const]));
    const apart = { overlaps: overlaps(short), strays: strays(short) };
    return tucked
      ? { ...apart, lumps: lumps(tucked), bare: bareStretches(tucked) }
      : { ...apart, lumps: [], bare: [] };
  });
  return {
    overlaps: found.flatMap((one) => one.overlaps),
    strays: found.flatMap((one) => one.strays),
    lumps: found.flatMap((one) => one.lumps),
    bare: found.flatMap((one) => one.bare),
  };
}

describe.each([
  ['200 blocks of convex patches', () => convexBlocks(200)],
  ['200 Voronoi blocks, where three seams meet in every point', () => voronoiBlocks(200)],
  ['the counties of Iowa, Vermont and Colorado and the demo panel', () => drawnBlocks()],
] as const)('on %s', (_, blocks) => {
  test('short ends leave bands apart and every needle point on its own, nothing raised lies under other thread, and no 3 mm stay bare', async () => {
    const { overlaps, strays, lumps, bare } = amiss(await blocks());
    expect(overlaps).toEqual([]);
    expect(strays).toEqual([]);
    expect(lumps).toEqual([]);
    expect(bare).toEqual([]);
  }, 180_000);
});
