import { expect, test } from 'vitest';
import { convexBlocks, drawnBlocks, type NamedBlock, voronoiBlocks } from './blocks.js';
import { fitted } from './fitted.js';
import { clothOf, sharedArea } from './polygons.js';

/** Pairs of treatments whose bands share more than a thousandth of a square millimeter, told by name. */
function overlaps(blocks: readonly NamedBlock[]): string[] {
  return blocks.flatMap((block) => {
    const { fits } = fitted(block, 'short');
    const cloths = fits.map(({ claimed }) => clothOf(claimed));
    return fits.flatMap((one, i) =>
      fits.slice(i + 1).flatMap((other, k) => {
        const area = sharedArea(cloths[i], cloths[i + 1 + k]);
        return area > 0.001
          ? [`${block.name}: seams ${one.fit.seam} and ${other.fit.seam} share ${area.toFixed(3)} mm2`]
          : [];
      }),
    );
  });
}

// Areas by Clipper (clipper2-ts).
test('bands of treatments that stop short do not meet: 200 blocks of convex patches', () => {
  expect(overlaps(convexBlocks(200))).toEqual([]);
});

test('nor on 200 Voronoi blocks, where three seams meet in every point', () => {
  expect(overlaps(voronoiBlocks(200))).toEqual([]);
});

test('nor on the counties of Iowa, Vermont and Colorado, and the demo panel', async () => {
  expect(overlaps(await drawnBlocks())).toEqual([]);
});
