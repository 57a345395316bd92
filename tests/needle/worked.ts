import fc from 'fast-check';
import type { Chain } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { ofOneThread, threadsByClass } from '../../src/fit/one-thread.js';
import { ornamentChain } from '../../src/fit/place-ornament.js';
import type { Figure, Values } from '../../src/stitches/stitch.js';
import { askFor } from '../fit/asks.js';
import { mapOfLines } from '../fit/block-of-lines.js';
import { builtIn, stitchNamed } from '../stitches/dictionary.js';

/** A stitch or an ornament of the dictionary at any of its sizes, as it is laid. */
export interface Worked {
  /** what it is, and at which sizes */
  readonly name: string;
  readonly passes: number;
  /** one chain or several for each of its threads */
  readonly chains: readonly Chain[];
}

const share = fc.double({ min: 0, max: 1, noNaN: true });
const shares = fc.array(share, { minLength: 12, maxLength: 12 });
const anyPasses = fc.integer({ min: 1, max: 5 });

const valuesAt = ({ parameters }: Figure, at: readonly number[]): Values =>
  Object.fromEntries(
    parameters.map(({ name, unit, min, max }, i) => {
      const value = min + at[i] * (max - min);
      return [name, unit === 'count' ? Math.round(value) : value];
    }),
  );

const named = (name: string, values: Values, passes: number): string =>
  `${name}, ${passes} passes, ${JSON.stringify(values)}`;

/** On a line of eight repeats that bends to either hand. */
export const anyStitch = (passes: fc.Arbitrary<number> = anyPasses): fc.Arbitrary<Worked> =>
  fc
    .record({
      stitch: fc.constantFrom(...builtIn.stitches.keys()),
      at: shares,
      bend: fc.double({ min: -0.25, max: 0.25, noNaN: true }),
      passes,
    })
    .map(({ stitch, at, bend, passes }) => {
      const sizes = valuesAt(stitchNamed(stitch), at);
      const length = 8 * sizes.repeat;
      const line = Array.from({ length: 41 }, (_, i): [number, number] => [
        200 + (length * i) / 40,
        300 + bend * length * Math.sin((Math.PI * i) / 40),
      ]);
      const asks = [askFor(1, stitch, { sizes, passes })];
      const [{ fit }] = fitLines(mapOfLines([line]), asks, { gap: 0.6, outline: 'free' });
      return {
        name: named(stitch, sizes, passes),
        passes,
        chains: fit.layers.flatMap(({ chains }) => chains),
      };
    });

export const anyOrnament: fc.Arbitrary<Worked> = fc
  .record({ name: fc.constantFrom(...builtIn.ornaments.keys()), at: shares, passes: anyPasses })
  .map(({ name, at, passes }) => {
    const ornament = builtIn.ornaments.get(name)!;
    const values = valuesAt(ornament, at);
    const unit = ornament.build(values);
    const whole = ornamentChain(unit, { x: 0, y: 0, theta: 0 }, passes);
    const chains = ornament.threads.map((_, thread) => ofOneThread(whole, threadsByClass(unit), thread));
    return { name: named(name, values, passes), passes, chains };
  });
