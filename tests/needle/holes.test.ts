import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { craftFor } from '../../src/needle/craft.js';
import type { Craft, Runs } from '../../src/needle/run.js';
import { sewChain, sewChains } from '../../src/needle/sew-chain.js';
import { askFor } from '../fit/asks.js';
import { mapOfLines } from '../fit/block-of-lines.js';
import { dictionary, stitchNamed } from '../stitches/dictionary.js';
import { ChainMaker, craft, sprigs } from './chains.js';

type Spot = readonly [number, number];

/**
 * How often the hole that gets most is pierced. A hole is one place, to 0.01 mm; holes of two needle points that come to lie
 * side by side, as those of a tie and of a leg that passes by, are two. The needle jumps to where a run begins; it pierces there
 * only when the tie comes back.
 */
function mostPierced({ xy, start }: Runs): number {
  const holes = new Map<string, number>();
  for (let run = 0; run + 1 < start.length; run++) {
    for (let i = start[run] + 1; i < start[run + 1]; i++) {
      const hole = `${Math.round(100 * xy[2 * i])},${Math.round(100 * xy[2 * i + 1])}`;
      holes.set(hole, (holes.get(hole) ?? 0) + 1);
    }
  }
  return Math.max(0, ...holes.values());
}

/** A built-in stitch with its repeat and width anywhere in their ranges, on a seam of 60 mm and more. */
const worked = fc.record({
  stitch: fc.constantFrom(...dictionary.map(({ name }) => name)),
  share: fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
  bend: fc.double({ min: -12, max: 12, noNaN: true }),
  passes: fc.integer({ min: 1, max: 8 }),
  weight: fc.constantFrom('No. 60', 'No. 40', 'No. 30', 'No. 12'),
});

type Worked = typeof worked extends fc.Arbitrary<infer T> ? T : never;

/** One thread after another: what each of them does to a hole. */
function sewnOf({ stitch, share, bend, passes, weight }: Worked): Runs[] {
  const sizes = Object.fromEntries(
    ['repeat', 'width'].map((name, i) => {
      const { min, max } = stitchNamed(stitch).parameters.find((known) => known.name === name)!;
      return [name, min + share[i] * (Math.min(max, 2 * min) - min)];
    }),
  );
  const line: Spot[] = Array.from({ length: 25 }, (_, i) => [60 + 3 * i, 100 + bend * Math.sin(i / 8)]);
  const asks = [askFor(1, stitch, { sizes, passes })];
  const [{ fit }] = fitLines(mapOfLines([line]), asks, { gap: 0.6, outline: 'trim' });
  return fit.layers.map(({ chains }) => sewChains(chains, craftFor(weight)).runs);
}

describe('a hole', () => {
  it('of any stitch, at any size and weight, is pierced no more often than the limit, ties counted', () => {
    fc.assert(
      fc.property(worked, (asked) => {
        const most = Math.max(0, ...sewnOf(asked).map(mostPierced));
        expect(most).toBeLessThanOrEqual(craftFor(asked.weight).holeLimit);
      }),
      { numRuns: 100 },
    );
  });

  it('is pierced by the tie that comes back to it, as it is by the legs that meet there', () => {
    for (const passes of [1, 2, 3, 4, 5]) {
      const { runs } = sewChain(sprigs(3, passes), craft);
      expect(mostPierced(runs)).toBeLessThanOrEqual(craft.holeLimit);
    }
  });

  it('on the ring where many rays start is pierced no more often, however many passes a ray gets', () => {
    for (let passes = 1; passes <= 20; passes++)
      expect(mostPierced(sewChain(star(8, passes), craft).runs)).toBeLessThanOrEqual(craft.holeLimit);
  });

  it('in the padding of a satin is pierced no more often, however many passes pad it', () => {
    for (let passes = 1; passes <= 20; passes++) {
      const { runs } = sewChain(petal(passes), craft);
      expect(mostPierced(runs)).toBeLessThanOrEqual(craft.holeLimit);
    }
  });

  it('takes fewer piercings on finer cloth', () => {
    const fine: Craft = { ...craft, holeLimit: 4 };
    expect(mostPierced(sewChain(sprigs(3, 3), fine).runs)).toBeLessThanOrEqual(4);
  });
});

function star(rays: number, passes: number): Chain {
  const maker = new ChainMaker();
  for (let i = 0; i < rays; i++) {
    const angle = (2 * Math.PI * i) / rays;
    maker.leg(0, 0, 'straight', passes, [
      [0, 0],
      [6 * Math.cos(angle), 6 * Math.sin(angle)],
    ]);
  }
  return maker.chain();
}

const petal = (passes: number): Chain =>
  new ChainMaker()
    .leg(
      0,
      0,
      'petal',
      passes,
      [
        [0, 0],
        [3, 0],
        [6, 0],
      ],
      1.6,
    )
    .chain();
