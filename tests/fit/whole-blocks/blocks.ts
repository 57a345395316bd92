import { readFileSync } from 'node:fs';
import { buildSeamMap } from '../../../src/block/build-seam-map.js';
import { readSvgBlock } from '../../../src/block/read-drawing.js';
import type { SeamMap } from '../../../src/block/seam-map.js';
import { countyBlock } from '../../fixtures/counties.js';
import { convexBlock } from './convex-block.js';
import { voronoiBlock } from './voronoi-block.js';

export interface NamedBlock {
  readonly name: string;
  readonly map: SeamMap;
  readonly seed: number;
}

const source = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
const numbers = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

export const convexBlocks = (count: number): NamedBlock[] =>
  numbers(count).map((seed) => ({ name: `convex ${seed}`, map: buildSeamMap(convexBlock(seed)).map, seed }));

export const voronoiBlocks = (count: number): NamedBlock[] =>
  numbers(count).map((seed) => ({
    name: `voronoi ${seed}`,
    map: buildSeamMap(voronoiBlock(seed)).map,
    seed,
  }));

/** Iowa, Vermont, Colorado, and the demo panel. */
export async function drawnBlocks(): Promise<NamedBlock[]> {
  const panel = readFileSync(new URL('../../../gallery/demo/panel.svg', import.meta.url), 'utf8');
  return [
    ...['19', '50', '08'].map((state, i) => ({
      name: `counties of ${state}`,
      map: buildSeamMap(countyBlock(state)).map,
      seed: 1000 + i,
    })),
    { name: 'demo panel', map: (await readSvgBlock(panel, 'panel.svg', source)).map, seed: 1003 },
  ];
}
