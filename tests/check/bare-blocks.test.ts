import { expect, test } from 'vitest';
import { askedLines } from '../../src/asked/lines.js';
import type { Block } from '../../src/block/block.js';
import { bareSeam } from '../../src/check/bare-seam.js';
import { type Dressed, dress } from '../../src/dress.js';
import { rowsOf, wholeReach } from '../../src/fit/rows.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { defaultDressing, type PlanOptions } from '../../src/plan.js';
import { convexBlocks, type NamedBlock, voronoiBlocks } from '../fit/whole-blocks/blocks.js';
import { builtIn } from '../stitches/dictionary.js';

const source = { file: 'block.svg', stops: null, snap: 0.3, through: [] };

/** Stretches of seam over 3 mm that lie further from any thread than the rows on them reach. */
function bare({ name, map }: NamedBlock, dressing: Dressing, { lines }: Dressed): string[] {
  const threads = lines.flatMap(({ layers }) => layers.map(({ runs }) => runs));
  const asks = new Map(askedLines(map, dressing, builtIn).lines.map(({ ask }) => [ask.seam, ask]));
  const worked = lines.map(({ fit: { seam, scale } }) => {
    const ask = asks.get(seam)!;
    // flowers beside a seam do not cover it, and where no repeat fits a plain line reaches over no more than itself
    const rows = { ...rowsOf(ask, false), accents: [] };
    const { left, right } = wholeReach(rows, scale ?? 1, ask.sized.repeat * (scale ?? 1));
    return { seam, reach: scale === null ? 0.5 : Math.max(left, right), short: false };
  });
  return bareSeam(map, worked, threads).map(({ message }) => `${name}: ${message}`);
}

const works: (readonly [string, Partial<PlanOptions>])[] = [
  ['stitches chosen in turn', {}],
  ...[...builtIn.stitches.keys()].map((stitch) => [stitch, { stitch }] as const),
  ...[...builtIn.treatments].map(([name, treatment]) => [name, { treatment }] as const),
];
const blocks = [...convexBlocks(20), ...voronoiBlocks(20)];
/** Each is worked on so many blocks, others than the next one. */
const EACH = 5;

test.each(works)('%s leave no 3 mm of a seam bare on random blocks, ends tucked', (name, options) => {
  const first = EACH * works.findIndex(([other]) => other === name);
  for (let k = 0; k < EACH; k++) {
    const one = blocks[(first + k) % blocks.length];
    const dressing = defaultDressing(one.map, { source, dictionary: builtIn, ...options });
    const block: Block = {
      name: one.name,
      map: one.map,
      existing: null,
      stops: [],
      origin: [0, 0],
      findings: [],
    };
    expect(bare(one, dressing, dress(block, dressing, builtIn))).toEqual([]);
  }
});
