import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Uneven, unevenness } from '../../src/fit/by-hand.js';
import type { Chain, SeamFit } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { legNamed, stitchNamed } from '../stitches/dictionary.js';
import { askFor, chainsOf } from './asks.js';
import { mapOfLines } from './block-of-lines.js';
import { anyLine, curvedLine, type LineToDress, ringLine, straightLine } from './lines-to-dress.js';

const RULES = { gap: 0.6, outline: 'free' } as const;
/** Lines without corners: those are rounded a little wider by hand, which may change the count there. */
const smooth = fc.oneof(straightLine, curvedLine, ringLine);
const measure = fc.double({ min: 0.05, max: 1, noNaN: true });
const seed = fc.integer({ min: 1, max: 1_000_000 });
const stitches = fc.constantFrom(
  'blanket',
  'feather',
  'herringbone',
  'chevron',
  'cretan',
  'single-feather',
  'lazy-daisy',
);

/** One line in one stitch, as uneven as that. */
function worked({ points }: LineToDress, stitch: string, by: number, seed: number): SeamFit {
  const ask = askFor(1, stitch, { uneven: unevenness(by, seed) });
  return fitLines(mapOfLines([points]), [ask], RULES)[0].fit;
}

/** What every leg joins and what it is, places aside. */
const structureOf = (chains: readonly Chain[]) =>
  chains.map(({ units, closed, from, to, legClass, unit, passes, kind, nodes }) => ({
    units,
    closed,
    holes: nodes.length / 2,
    legs: [...from.keys()].map((i) => [from[i], to[i], legClass[i], unit[i], passes[i], kind[i]]),
  }));

const farthest = (a: readonly Chain[], b: readonly Chain[], axis: number): number =>
  a.reduce(
    (most, { nodes }, c) =>
      nodes.reduce(
        (far, value, i) => (i % 2 === axis ? Math.max(far, Math.abs(value - b[c].nodes[i])) : far),
        most,
      ),
    0,
  );

describe('worked by hand', () => {
  test('to no measure is worked evenly', () => {
    fc.assert(
      fc.property(anyLine, stitches, seed, (line, stitch, seed) => {
        const even = fitLines(mapOfLines([line.points]), [askFor(1, stitch)], RULES)[0].fit;
        expect(worked(line, stitch, 0, seed)).toEqual(even);
      }),
      { numRuns: 12 },
    );
  });

  test('with the same seed comes out the same, with another seed otherwise', () => {
    fc.assert(
      fc.property(anyLine, stitches, measure, seed, (line, stitch, by, seed) => {
        const once = worked(line, stitch, by, seed);
        expect(worked(line, stitch, by, seed)).toEqual(once);
        expect(worked(line, stitch, by, seed + 1)).not.toEqual(once);
      }),
      { numRuns: 12 },
    );
  });

  test('joins the same holes by the same legs: only their places differ, and all of them a little', () => {
    fc.assert(
      fc.property(smooth, stitches, measure, seed, (line, stitch, by, seed) => {
        const [even, uneven] = [worked(line, stitch, 0, seed), worked(line, stitch, by, seed)].map(chainsOf);
        expect(structureOf(uneven)).toEqual(structureOf(even));
        const still = uneven.flatMap(({ nodes }, c) =>
          [...nodes].filter((value, i) => value === even[c].nodes[i]),
        );
        expect(still).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  test("leads every leg's thread from hole to hole", () => {
    fc.assert(
      fc.property(anyLine, stitches, measure, seed, (line, stitch, by, seed) => {
        const gaps = chainsOf(worked(line, stitch, by, seed)).flatMap(
          ({ nodes, path, pathStart, from, to }) =>
            [...from.keys()].flatMap((leg) =>
              [
                [from[leg], pathStart[leg]],
                [to[leg], pathStart[leg + 1] - 1],
              ].map(([node, point]) =>
                Math.hypot(path[2 * point] - nodes[2 * node], path[2 * point + 1] - nodes[2 * node + 1]),
              ),
            ),
        );
        expect(Math.max(...gaps)).toBeLessThan(1e-9);
      }),
      { numRuns: 20 },
    );
  });

  test('strays no further than a hand strays: in its aim, in the turn of its unit, in the length of its repeat', () => {
    fc.assert(
      fc.property(straightLine, stitches, measure, seed, (line, stitch, by, seed) => {
        const fit = worked(line, stitch, 0, seed);
        const even = chainsOf(fit);
        const { tips, turn, lengths } = unevenness(by, seed)!;
        const still: Uneven = { tips: 0, turn: 0, lengths: 0, seed };
        const strays = (uneven: Partial<Uneven>) => {
          const ask = askFor(1, stitch, { uneven: { ...still, ...uneven } });
          const chains = chainsOf(fitLines(mapOfLines([line.points]), [ask], RULES)[0].fit);
          return { along: farthest(even, chains, 0), across: farthest(even, chains, 1) };
        };
        const { reach, overhang } = stitchNamed(stitch).build({});
        const [stretch] = fit.stretches;
        const repeat = (stretch.to - stretch.from) / stretch.repeats;

        const aim = strays({ tips });
        expect(Math.max(aim.along, aim.across)).toBeLessThanOrEqual(tips);
        // a unit turns about its middle: no hole of it lies further from there than the unit is long and wide
        const around = Math.hypot(reach.left + reach.right, repeat + overhang.start + overhang.end);
        const turned = strays({ turn });
        expect(Math.max(turned.along, turned.across)).toBeLessThanOrEqual(turn * around);
        // a longer or shorter repeat moves its holes along the line only, those in the next repeat with that one
        const moved = strays({ lengths });
        expect(moved.across).toBeLessThan(1e-9);
        expect(moved.along).toBeLessThanOrEqual(
          lengths * (repeat + 2 * Math.max(overhang.start, overhang.end)),
        );
      }),
      { numRuns: 30 },
    );
  });

  test('at the full measure really differs from even: some hole by a quarter of the most at least', () => {
    fc.assert(
      fc.property(smooth, stitches, seed, (line, stitch, seed) => {
        const [even, uneven] = [worked(line, stitch, 0, seed), worked(line, stitch, 1, seed)].map(chainsOf);
        const far = Math.max(farthest(even, uneven, 0), farthest(even, uneven, 1));
        expect(far).toBeGreaterThan(unevenness(1, seed)!.tips / 4);
      }),
      { numRuns: 20 },
    );
  });

  test('keeps the ends of the row where they were, so that all repeats together are as long as before', () => {
    fc.assert(
      fc.property(straightLine, measure, seed, (line, by, seed) => {
        const heading = legNamed(stitchNamed('blanket').build({}), 'heading').class;
        const { tips, turn } = unevenness(by, seed)!;
        const [even, uneven] = [0, by].map((own) => {
          const [{ from, to, nodes, legClass }] = chainsOf(worked(line, 'blanket', own, seed));
          const headings = [...from.keys()].filter((i) => legClass[i] === heading);
          return [nodes[2 * from[headings[0]]], nodes[2 * to[headings[headings.length - 1]]]];
        });
        // the end holes themselves are aimed at as well as any other
        const aim = tips + turn * 7;
        expect(Math.abs(uneven[0] - even[0])).toBeLessThan(aim);
        expect(Math.abs(uneven[1] - even[1])).toBeLessThan(aim);
      }),
      { numRuns: 20 },
    );
  });

  test('stays closed round a ring', () => {
    fc.assert(
      fc.property(ringLine, stitches, measure, seed, (line, stitch, by, seed) => {
        const rows = chainsOf(worked(line, stitch, by, seed));
        expect(rows.filter(({ closed }) => !closed)).toEqual([]);
      }),
      { numRuns: 10 },
    );
  });
});
