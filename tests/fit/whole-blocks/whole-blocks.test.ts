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
    withBare: found.filter(({ bare }) => bare.length > 0).length,
  };
}

describe.each([
  ['200 blocks of convex patches', () => convexBlocks(200), 8],
  ['200 Voronoi blocks, where three seams meet in every point', () => voronoiBlocks(200), 5],
  ['the counties of Iowa, Vermont and Colorado and the demo panel', () => drawnBlocks(), 1],
] as const)('on %s', (_, blocks, mostBare) => {
  test('short ends leave bands apart and every needle point on its own, nothing raised lies under other thread, and next to nothing stays bare', async () => {
    const { overlaps, strays, lumps, bare, withBare } = amiss(await blocks());
    expect(overlaps).toEqual([]);
    expect(strays).toEqual([]);
    expect(lumps).toEqual([]);
    // single figures that do not fit at a slanting edge; how many blocks have any at all
    expect(withBare, bare.join('\n')).toBeLessThanOrEqual(mostBare);
  }, 180_000);
});
