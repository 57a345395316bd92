import type { Block } from '../block/block.js';
import { readSvgBlock } from '../block/read-drawing.js';
import { DEFAULT_GAP } from '../fit/ends.js';
import { type BlockSource, DRESSING_VERSION, type Dressing } from '../formats/dressing.js';
import { DEFAULT_PASSES } from '../harmony/passes.js';
import { USUAL_THREADS } from '../plan.js';
import type { Ornament } from '../stitches/stitch.js';

/**
 * Sample seams to try a stitch on: a straight one, a gentle curve, and one with a right-angle corner. As a drawing, so
 * that a swatch takes the very way that a block takes.
 */
export const sampleSeams = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">
  <path fill="none" stroke="#000" d="M10 14H90"/>
  <path fill="none" stroke="#000" d="M10 42Q50 22 90 42"/>
  <path fill="none" stroke="#000" d="M10 60H70V90"/>
</svg>`;

export const sampleBlock = (name: string, source: BlockSource): Promise<Block> =>
  readSvgBlock(sampleSeams, `${name}.svg`, source);

/** A plain patch to try an ornament on. */
export const samplePatch = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">
  <rect fill="#e9e2d4" x="4" y="4" width="92" height="92"/>
</svg>`;

/**
 * An ornament on a patch: at its usual size upright and turned, at its smallest good size and a large one. Each stands
 * in the middle of a quarter.
 */
export function ornamentSample(source: BlockSource, ornament: Ornament): Dressing {
  const size = ornament.parameters.find(({ name }) => name === 'size')!;
  const large = Math.min(size.max, 38, 2 * size.default);
  const places = [
    { at: [27, 27], turn: 0, size: size.default },
    { at: [73, 27], turn: 45, size: size.default },
    { at: [27, 73], turn: 0, size: ornament.smallest.size },
    { at: [73, 73], turn: 0, size: large },
  ] as const;
  return {
    format: 'seamwright-dressing',
    version: DRESSING_VERSION,
    block: source,
    ends: 'tuck',
    outline: 'free',
    gap: DEFAULT_GAP,
    treatments: [],
    ornaments: places.map((place) => ({
      ornament: ornament.name,
      at: place.at,
      turn: place.turn,
      parameters: { size: place.size },
      thread: 1,
      moreThreads: [0, 2, 3, 1].slice(0, Math.max(0, ornament.threads.length - 1)),
      passes: DEFAULT_PASSES,
    })),
    threads: USUAL_THREADS,
    hoop: null,
    after: null,
    seed: 1,
  };
}

export const patchBlock = (name: string, source: BlockSource): Promise<Block> =>
  readSvgBlock(samplePatch, `${name}.svg`, source);
