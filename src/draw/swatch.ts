import type { Block } from '../block/block.js';
import { readSvgBlock } from '../block/read-drawing.js';
import type { BlockSource } from '../formats/dressing.js';

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
