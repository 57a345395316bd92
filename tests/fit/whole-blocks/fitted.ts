import { askedLines } from '../../../src/asked/lines.js';
import type { LineAsk } from '../../../src/fit/ask.js';
import { fitLines, type LineFit } from '../../../src/fit/fit-lines.js';
import type { Manner } from '../../../src/formats/dressing.js';
import { builtIn } from '../../stitches/dictionary.js';
import type { NamedBlock } from './blocks.js';
import { randomDressing } from './random-dressing.js';

/** A block whose every seam has random work on it; answers stand in the order of the asks. */
export interface Fitted {
  readonly block: NamedBlock;
  readonly asks: readonly LineAsk[];
  readonly fits: readonly LineFit[];
}

export function fitted(block: NamedBlock, ends: Manner): Fitted {
  const dressing = randomDressing(block.map, block.seed, ends);
  const asks = askedLines(block.map, dressing, builtIn).lines.map(({ ask }) => ask);
  return { block, asks, fits: fitLines(block.map, asks, { gap: dressing.gap, outline: dressing.outline }) };
}
