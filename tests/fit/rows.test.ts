import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leadingAll } from '../../src/asked/in-step.js';
import type { AccentAsk } from '../../src/fit/accents.js';
import type { FollowerAsk, LineAsk } from '../../src/fit/ask.js';
import type { Chain, SeamFit } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { rowsOf, wholeReach } from '../../src/fit/rows.js';
import { sized } from '../../src/fit/sized.js';
import { sizedOrnament } from '../../src/fit/sized-ornament.js';
import type { WaveShape } from '../../src/fit/waves.js';
import { builtIn, legNamed, stitchNamed } from '../stitches/dictionary.js';
import { askFor, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';
import {
  anyLine,
  corneredLine,
  curvedLine,
  type LineToDress,
  ringLine,
  straightLine,
} from './lines-to-dress.js';

type XY = readonly [number, number];

const RULES = { gap: 0.6, outline: 'free' } as const;
const repeat = fc.double({ min: 5, max: 9, noNaN: true });

const row = (
  stitch: string,
  sizes: Record<string, number>,
  more: Partial<FollowerAsk> = {},
): FollowerAsk => ({
  sized: sized(stitchNamed(stitch), sizes),
  side: 'left',
  passes: 3,
  offset: 0,
  times: 1,
  step: 0,
  mirrored: false,
  ...more,
});

const worked = ({ points }: LineToDress, ask: LineAsk): SeamFit =>
  fitLines(mapOfLines([points]), [ask], RULES)[0].fit;

const chainsOfRow = (fit: SeamFit, index: number): Chain[] =>
  fit.layers.filter((layer) => layer.kind === 'row' && layer.index === index).flatMap(({ chains }) => chains);

/** Where a leg of a stitch begins, repeat by repeat: with a leg that begins each repeat on the line, where repeats begin. */
function begins(chains: readonly Chain[], stitch: string, leg: string): XY[] {
  const legClass = legNamed(stitchNamed(stitch).build({}), leg).class;
  return chains.flatMap(({ from, nodes, legClass: classes }) =>
    [...from.keys()]
      .filter((i) => classes[i] === legClass)
      .map((i): XY => [nodes[2 * from[i]], nodes[2 * from[i] + 1]]),
  );
}

const apart = ([ax, ay]: XY, [bx, by]: XY) => Math.hypot(ax - bx, ay - by);
const farthest = (ones: readonly XY[], others: readonly XY[]) =>
  ones.reduce((most, one, k) => Math.max(most, apart(one, others[k])), 0);

describe('rows of one treatment', () => {
  test('stay in step: repeat k of every row begins where repeat k of the first begins, whatever the line and the fit', () => {
    fc.assert(
      fc.property(
        anyLine,
        repeat,
        fc.constantFrom('fern', 'blanket', 'single-feather'),
        (line, wanted, second) => {
          const first = 'blanket';
          const leg = stitchNamed(second)
            .build({})
            .legs.find(({ from, kind }) => from === 0 && kind !== 'under')!;
          const ask = askFor(1, first, {
            sizes: { repeat: wanted, width: 4 },
            followers: [row(second, {}, { side: 'right' })],
          });
          const fit = worked(line, ask);
          const firsts = begins(chainsOfRow(fit, 0), first, 'heading');
          const seconds = begins(chainsOfRow(fit, 1), second, leg.name).slice(0, firsts.length);
          expect(firsts.length).toBe(fit.stretches.reduce((sum, { repeats }) => sum + repeats, 0));
          expect(seconds).toHaveLength(firsts.length);
          expect(farthest(firsts, seconds)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('lie side by side where they are moved apart: repeats begin square across from each other', () => {
    fc.assert(
      fc.property(
        fc.oneof(straightLine, curvedLine, ringLine),
        repeat,
        fc.double({ min: -3, max: 3, noNaN: true }),
        (line, wanted, offset) => {
          const fit = worked(
            line,
            askFor(1, 'blanket', {
              sizes: { repeat: wanted, width: 3 },
              followers: [row('blanket', { width: 3 }, { side: 'right', offset })],
            }),
          );
          const firsts = begins(chainsOfRow(fit, 0), 'blanket', 'heading');
          const seconds = begins(chainsOfRow(fit, 1), 'blanket', 'heading');
          expect(seconds).toHaveLength(firsts.length);
          for (const [k, one] of firsts.entries()) {
            expect(Math.abs(apart(one, seconds[k]) - Math.abs(offset))).toBeLessThan(1e-6);
          }
        },
      ),
      { numRuns: 20 },
    );
  });

  test('worked twice as close, one has two repeats for each of the first, and every second one begins with it', () => {
    fc.assert(
      fc.property(anyLine, repeat, (line, wanted) => {
        const fit = worked(
          line,
          askFor(1, 'blanket', {
            sizes: { repeat: wanted, width: 4 },
            followers: [row('blanket', { width: 3 }, { side: 'right', times: 2 })],
          }),
        );
        const firsts = begins(chainsOfRow(fit, 0), 'blanket', 'heading');
        const seconds = begins(chainsOfRow(fit, 1), 'blanket', 'heading');
        expect(seconds).toHaveLength(2 * firsts.length);
        const every = seconds.filter((_, k) => k % 2 === 0);
        expect(farthest(firsts, every)).toBeLessThan(1e-9);
      }),
      { numRuns: 20 },
    );
  });

  test('worked half as close, one has a repeat for every two of the first, begins with them and never spans a gap', () => {
    fc.assert(
      fc.property(anyLine, fc.double({ min: 2.5, max: 5, noNaN: true }), (line, wanted) => {
        const fit = worked(
          line,
          askFor(1, 'blanket', {
            sizes: { repeat: wanted, width: 3 },
            followers: [row('blanket', { width: 3 }, { side: 'right', times: 0.5 })],
          }),
        );
        const firsts = begins(chainsOfRow(fit, 0), 'blanket', 'heading');
        const chains = chainsOfRow(fit, 1);
        const seconds = begins(chains, 'blanket', 'heading');
        const whole = fit.stretches.reduce((sum, { repeats }) => sum + Math.floor(repeats / 2), 0);
        expect(seconds).toHaveLength(whole);
        const strays = seconds.filter((second) => !firsts.some((one) => apart(one, second) < 1e-9));
        expect(strays).toEqual([]);
        // where a side has an odd one over, the row stops and begins again instead of reaching over it
        const longest = Math.max(
          ...fit.stretches.map(({ from, to, repeats }) => (2 * (to - from)) / repeats),
        );
        expect(longestHeading(chains)).toBeLessThan(1.05 * longest + 0.1);
      }),
      { numRuns: 30 },
    );
  });

  test('worked half as close, one fills every side that takes an even number of the first: nothing stays bare', () => {
    fc.assert(
      fc.property(
        anyLine,
        fc.double({ min: 3, max: 6, noNaN: true }),
        fc.constantFrom('blanket', 'fern', 'single-feather'),
        (line, wanted, second) => {
          const ask = askFor(1, 'blanket', {
            sizes: { repeat: wanted, width: 3 },
            followers: [row(second, { width: 3 }, { side: 'right', times: 0.5 })],
          });
          const fit = worked(line, ask);
          // lines of 40 mm and more hold six repeats or more, and from four on an even count is near enough
          const [first, sparse] = fit.rows;
          expect(sparse.along).toBeCloseTo(first.along, 6);
          expect(2 * sparse.repeats).toBeCloseTo(first.repeats, 9);
          const halves = stitchNamed(second).halves ? 1 : 2;
          expect(fit.stretches.map(({ repeats }) => repeats % halves)).toEqual(fit.stretches.map(() => 0));
        },
      ),
      { numRuns: 30 },
    );
  });

  test('are counted as one: none leaves part of a side bare, and round a ring every one closes, on waves as well', () => {
    const stitches = fc.constantFrom('blanket', 'feather', 'herringbone', 'fern', 'single-feather');
    const waves = fc.option(
      fc.record({
        shape: fc.constantFrom<WaveShape>('wave', 'scallop', 'points'),
        height: fc.double({ min: 1, max: 2.5, noNaN: true }),
        length: fc.double({ min: 24, max: 30, noNaN: true }),
      }),
      { nil: undefined },
    );
    const following = fc.oneof(
      fc.tuple(stitches, fc.constantFrom(0.5, 1)),
      fc.constant(['blanket', 2] as const),
    );
    const bare: string[] = [];
    fc.assert(
      fc.property(
        fc.oneof(anyLine, ringLine),
        stitches,
        following,
        waves,
        (line, first, [second, times], waves) => {
          const follower = row(second, { width: 4 }, { side: 'right', times });
          const ask = askFor(1, first, { sizes: { repeat: 6, width: 4 }, waves, followers: [follower] });
          const fit = worked(line, { ...ask, sized: leadingAll(ask.sized, [follower]) });
          const [base, other] = fit.rows;
          const what = `${second} at ${times} beside ${first} on a ${line.kind} line, ${waves?.shape ?? 'plain'}`;
          if (Math.abs(base.along - other.along) > 1e-6 || base.along < 30) bare.push(what);
          if (line.kind === 'ring' && !chainsOfRow(fit, 1).every(({ closed }) => closed))
            bare.push(`${what}: open`);
        },
      ),
      { numRuns: 150 },
    );
    expect(bare).toEqual([]);
  });

  test('of which one is worked half as close still stand where one repeat is all there is room for', () => {
    const short = {
      points: [
        [30, 100],
        [36, 100],
      ] as const,
      kind: 'straight' as const,
    };
    const sizes = { repeat: 6, width: 3 };
    const fit = worked(
      short,
      askFor(1, 'blanket', { sizes, followers: [row('blanket', { width: 3 }, { times: 0.5 })] }),
    );
    expect(fit.rows[0].repeats).toBeGreaterThan(0);
  });

  test('moved along by half a repeat, one begins halfway between the repeats of the first and has one less', () => {
    fc.assert(
      fc.property(straightLine, repeat, fc.constantFrom(0.25, 0.5, 0.75), (line, wanted, step) => {
        const fit = worked(
          line,
          askFor(1, 'blanket', {
            sizes: { repeat: wanted, width: 4 },
            followers: [row('blanket', { width: 4 }, { side: 'right', step })],
          }),
        );
        const firsts = begins(chainsOfRow(fit, 0), 'blanket', 'heading');
        const seconds = begins(chainsOfRow(fit, 1), 'blanket', 'heading');
        expect(seconds).toHaveLength(firsts.length - 1);
        for (const [k, [x, y]] of seconds.entries()) {
          const [a, b] = [firsts[k], firsts[k + 1]];
          expect(x).toBeCloseTo(a[0] + step * (b[0] - a[0]), 9);
          expect(y).toBeCloseTo(100, 9);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('moved along round a corner, one has one repeat less on every side, and the sides stand apart', () => {
    fc.assert(
      fc.property(corneredLine, repeat, (line, wanted) => {
        const fit = worked(
          line,
          askFor(1, 'blanket', {
            sizes: { repeat: wanted, width: 4 },
            followers: [row('blanket', { width: 4 }, { side: 'right', step: 0.5 })],
          }),
        );
        const counts = fit.stretches.map(({ repeats }) => repeats - 1).filter((count) => count > 0);
        expect(chainsOfRow(fit, 1).map(({ units }) => units)).toEqual(counts);
      }),
      { numRuns: 30 },
    );
  });

  test('moved along round a ring without corners, one keeps all its repeats and closes', () => {
    fc.assert(
      fc.property(ringLine, repeat, (line, wanted) => {
        const fit = worked(
          line,
          askFor(1, 'blanket', {
            sizes: { repeat: wanted, width: 4 },
            followers: [row('blanket', { width: 4 }, { side: 'right', step: 0.5 })],
          }),
        );
        const [first] = chainsOfRow(fit, 0);
        const [second] = chainsOfRow(fit, 1);
        expect([second.units, second.closed]).toEqual([first.units, true]);
      }),
      { numRuns: 30 },
    );
  });

  test('flipped, the same row is its own mirror image about the line', () => {
    fc.assert(
      fc.property(
        straightLine,
        fc.constantFrom('blanket', 'feather', 'cretan', 'single-feather', 'fly', 'herringbone'),
        (line, stitch) => {
          const fit = worked(line, askFor(1, stitch, { followers: [row(stitch, {}, { side: 'right' })] }));
          const [first, flipped] = [0, 1].map((index) => legPoints(chainsOfRow(fit, index)));
          const mirrored = first.map(([x, y]): XY => [x, 200 - y]);
          expect(flipped).toHaveLength(first.length);
          expect(farthest(mirrored, flipped)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('of blanket back to back are mirror images about the seam, a little apart in the middle', () => {
    fc.assert(
      fc.property(
        straightLine,
        repeat,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.boolean(),
        (line, wanted, half, reverse) => {
          const sizes = { repeat: wanted, width: 4 };
          const fit = worked(
            line,
            askFor(1, 'blanket', {
              sizes,
              offset: half,
              reverse,
              followers: [row('blanket', sizes, { side: 'right', offset: -half })],
            }),
          );
          const [upper, lower] = [0, 1].map((index) => legPoints(chainsOfRow(fit, index)));
          expect(
            farthest(
              upper.map(([x, y]): XY => [x, 200 - y]),
              lower,
            ),
          ).toBeLessThan(1e-9);
          // left of a seam that runs right is up
          const out = (points: readonly XY[]) => points.map(([, y]) => 100 - y);
          expect(Math.max(...out(upper))).toBeCloseTo(half + 4, 6);
          expect(Math.min(...out(lower))).toBeCloseTo(-half - 4, 6);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('all lie in the band that the treatment takes, with their accents and what is laid', () => {
    const stitches = fc.constantFrom(
      'blanket',
      'feather',
      'herringbone',
      'chevron',
      'cretan',
      'single-feather',
    );
    fc.assert(
      fc.property(
        fc.double({ min: 70, max: 140, noNaN: true }),
        stitches,
        stitches,
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.record({ reverse: fc.boolean(), onSecond: fc.boolean(), laid: fc.constantFrom(0, 8, 20) }),
        (long, one, other, offset, away, turn, { reverse, onSecond, laid }) => {
          const seats = stitchNamed(onSecond ? other : one).build({}).seats;
          const accents = seats.map(
            ({ name }): AccentAsk => ({ ...daisy, seat: name, row: onSecond ? 1 : 0, away, turn }),
          );
          const ask = askFor(1, one, {
            sizes: { repeat: 8 },
            reverse,
            laid,
            accents,
            followers: [row(other, { repeat: 8 }, { offset, side: 'right' })],
          });
          const fit = worked(
            {
              kind: 'straight',
              points: [
                [30, 100],
                [30 + long, 100],
              ],
            },
            ask,
          );
          const rows = rowsOf(ask, reverse);
          const fitted = fit.stretches[0];
          const { left, right } = wholeReach(rows, fit.scale!, (fitted.to - fitted.from) / fitted.repeats);
          const ys = legPoints(fit.layers.flatMap(({ chains }) => chains)).map(([, y]) => 100 - y);
          const [up, down] = reverse ? [right, left] : [left, right];
          expect(Math.max(...ys)).toBeLessThanOrEqual(up + 1e-6);
          expect(-Math.min(...ys)).toBeLessThanOrEqual(down + 1e-6);
          expect(left).toBeGreaterThanOrEqual(laid / 2);
          expect(right).toBeGreaterThanOrEqual(laid / 2);
        },
      ),
      { numRuns: 50 },
    );
  });
});

const daisy: AccentAsk = {
  row: 0,
  seat: 'tip',
  figures: [sizedOrnament(builtIn.ornaments.get('daisy-petal')!, {})],
  threads: [''],
  byHand: null,
  passes: 2,
  every: 1,
  from: 0,
  turn: 0,
  away: 0,
};

/** The longest stretch of line between the two ends of a blanket's heading, mm. */
function longestHeading(chains: readonly Chain[]): number {
  const heading = legNamed(stitchNamed('blanket').build({}), 'heading').class;
  return chains
    .flatMap(({ from, to, nodes, legClass }) =>
      [...from.keys()]
        .filter((i) => legClass[i] === heading)
        .map((i) =>
          apart([nodes[2 * from[i]], nodes[2 * from[i] + 1]], [nodes[2 * to[i]], nodes[2 * to[i] + 1]]),
        ),
    )
    .reduce((most, length) => Math.max(most, length), 0);
}

describe('what is laid along the line', () => {
  test('has a placement line along the whole dressed length, sewn first, once', () => {
    fc.assert(
      fc.property(anyLine, fc.double({ min: 3, max: 10, noNaN: true }), (line, laid) => {
        const fit = worked(line, askFor(1, 'blanket', { sizes: { width: 10 }, laid }));
        const [placement, ...others] = fit.layers;
        expect(placement.kind).toBe('placement');
        expect(others.map(({ kind }) => kind)).not.toContain('placement');
        const dressed = fit.stretches.reduce((sum, { from, to }) => sum + to - from, 0);
        const sewn = placement.chains.reduce((sum, chain) => sum + lengthOfLegs(chain), 0);
        // stitches of 2.5 mm are chords, which cut rings and corners a little short
        expect(sewn / dressed).toBeGreaterThan(0.98);
        expect(sewn / dressed).toBeLessThan(1 + 1e-6);
        expect(new Set(placement.chains.flatMap(({ passes }) => [...passes]))).toEqual(new Set([1]));
      }),
      { numRuns: 20 },
    );
  });
});

const lengthOfLegs = ({ from, to, nodes }: Chain): number =>
  [...from.keys()].reduce(
    (sum, i) =>
      sum + Math.hypot(nodes[2 * from[i]] - nodes[2 * to[i]], nodes[2 * from[i] + 1] - nodes[2 * to[i] + 1]),
    0,
  );
