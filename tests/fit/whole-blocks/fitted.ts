import { askedLines } from '../../../src/asked/lines.js';
import type { LineAsk } from '../../../src/fit/ask.js';
import { fitLines } from '../../../src/fit/fit-lines.js';
import type { LineFit } from '../../../src/fit/line-fit.js';
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

/** The same work with its ends made in one manner after the other. */
export function fitted<Ways extends readonly Manner[]>(
  block: NamedBlock,
  ...manners: Ways
): { [K in keyof Ways]: Fitted } {
  const dressing = randomDressing(block.map, block.seed, 'tuck');
  const lines = askedLines(block.map, dressing, builtIn).lines;
  const rules = { gap: dressing.gap, outline: dressing.outline };
  return manners.map((manner): Fitted => {
    const asks = lines.map(({ ask }) => ({ ...ask, manner }));
    return { block, asks, fits: fitLines(block.map, asks, rules) };
  }) as { [K in keyof Ways]: Fitted };
}
