import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ornamentNamed } from '../../src/asked/ornament-named.js';
import type { LineAsk } from '../../src/fit/ask.js';
import type { SeamFit } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import type { LineFit } from '../../src/fit/line-fit.js';
import { sized } from '../../src/fit/sized.js';
import { sizedOrnament } from '../../src/fit/sized-ornament.js';
import { alongOneWave, type WaveShape, type Waves, waveLine } from '../../src/fit/waves.js';
import { guideFromLine } from '../../src/geometry/guide-from-line.js';
import { builtIn, stitchFiles, stitchNamed } from '../stitches/dictionary.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';
import { anyLine, type LineToDress, ringLine, straightLine } from './lines-to-dress.js';

const RULES = { gap: 0.6, outline: 'free' } as const;
const shape = fc.constantFrom<WaveShape>('wave', 'scallop', 'points');
/** Gentle enough for a stitch a few mm wide. */
const gentle = fc.record({
  shape,
  height: fc.double({ min: 1, max: 4, noNaN: true }),
  length: fc.double({ min: 24, max: 36, noNaN: true }),
});
const narrow = { repeat: 5, width: 3 };

const fitted = ({ points }: LineToDress, ask: LineAsk): LineFit =>
  fitLines(mapOfLines([points]), [ask], RULES)[0];
const worked = (line: LineToDress, ask: LineAsk): SeamFit => fitted(line, ask).fit;

/** Complete elliptic integral of the second kind by the arithmetic-geometric mean (Abramowitz and Stegun, 17.6; from memory). */
function ellipticE(m: number): number {
  let a = 1;
  let b = Math.sqrt(1 - m);
  let c = Math.sqrt(m);
  let sum = (c * c) / 2;
  for (let power = 1; Math.abs(c) > 1e-15; power *= 2) {
    [a, b, c] = [(a + b) / 2, Math.sqrt(a * b), (a - b) / 2];
    sum += power * c * c;
  }
  return (Math.PI / (2 * a)) * (1 - sum);
}

describe('a line of waves', () => {
  test('is as long as the closed forms say: a zigzag, an arc over its chord, a sine', () => {
    fc.assert(
      fc.property(gentle, ({ height, length }) => {
        const along = (of: WaveShape) => alongOneWave({ shape: of, height, length }, length);
        expect(along('points')).toBeCloseTo(2 * Math.hypot(length / 2, height), 9);
        const radius = (length ** 2 / 4 + height ** 2) / (2 * height);
        expect(along('scallop') / (2 * radius * Math.asin(length / (2 * radius)))).toBeCloseTo(1, 4);
        // y = a sin(k x) over a wave: 4 sqrt(1 + a2 k2) E(a2 k2 / (1 + a2 k2)) / k
        const steep = (Math.PI * height) / length;
        const sine =
          ((4 * length) / (2 * Math.PI)) *
          Math.sqrt(1 + steep ** 2) *
          ellipticE(steep ** 2 / (1 + steep ** 2));
        expect(along('wave') / sine).toBeCloseTo(1, 4);
      }),
    );
  });

  test('has a sharp place at every cusp of a scallop and every tip of a zigzag, and a crest at every top', () => {
    const sharp = { wave: 0, scallop: 4, points: 9 };
    const tops = { wave: 10, scallop: 5, points: 5 };
    for (const of of ['wave', 'scallop', 'points'] as const) {
      const line = waveLine({ shape: of, height: 4, length: 20 }, [{ from: 0, to: 100, waves: 5 }], 1);
      expect([line.corners.length, line.crests.length]).toEqual([sharp[of], tops[of]]);
    }
  });

  test('keeps to its curve as a guide line, however high: nothing of it is taken for a drawing to be smoothed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 8, noNaN: true }),
        fc.double({ min: 10, max: 36, noNaN: true }),
        (height, length) => {
          const waves: Waves = { shape: 'wave', height, length };
          const line = waveLine(waves, [{ from: 0, to: 3 * length, waves: 3 }], 1);
          const guide = guideFromLine(line.points, line.corners, false);
          const off = Array.from(guide.x, (x, i) =>
            Math.abs(-guide.y[i] - (height / 2) * Math.sin((2 * Math.PI * x) / length)),
          );
          expect(Math.max(...off)).toBeLessThan(0.01);
        },
      ),
    );
  });

  test('lies as far to one hand of the seam as to the other', () => {
    fc.assert(
      fc.property(gentle, (waves) => {
        const { points } = waveLine(waves, [{ from: 3, to: 3 + 2 * waves.length, waves: 2 }], 1);
        const v = points.filter((_, i) => i % 2 === 1);
        expect(Math.max(...v)).toBeCloseTo(waves.height / 2, 9);
        expect(Math.min(...v)).toBeCloseTo(-waves.height / 2, 9);
      }),
    );
  });
});

describe('stitches on waves along a seam', () => {
  test('come in whole waves on every stretch, and whole repeats on every wave', () => {
    fc.assert(
      fc.property(anyLine, gentle, (line, waves) => {
        const fit = worked(line, askFor(1, 'blanket', { sizes: narrow, waves }));
        for (const { from, to, repeats, waves: own } of fit.stretches) {
          expect(own!.count % 1).toBe(0);
          expect(repeats % own!.count).toBe(0);
          expect((to - from) / own!.count / waves.length).toBeGreaterThan(0.6 - 1e-6);
          expect((to - from) / own!.count / waves.length).toBeLessThan(1.6 + 1e-6);
          const share = own!.along / repeats / narrow.repeat / fit.scale!;
          expect(share).toBeGreaterThan(0.8 - 1e-6);
          expect(share).toBeLessThan(1.25 + 1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('look alike on every wave of a straight seam: each is the one before, a wave further on', () => {
    fc.assert(
      fc.property(straightLine, gentle, (line, waves) => {
        const fit = worked(line, askFor(1, 'blanket', { sizes: narrow, waves }));
        const [stretch] = fit.stretches;
        const count = stretch.waves!.count;
        const per = stretch.repeats / count;
        const step = (stretch.to - stretch.from) / count;
        const [{ from, unit, nodes }] = chainsOf(fit);
        const begin = (k: number) => {
          const node = from[unit.indexOf(k * per)];
          return [nodes[2 * node], nodes[2 * node + 1]];
        };
        for (let k = 1; k < count; k++) {
          expect(begin(k)[0] - begin(k - 1)[0]).toBeCloseTo(step, 1);
          expect(begin(k)[1]).toBeCloseTo(begin(0)[1], 1);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('close a ring in whole waves without a visible start', () => {
    fc.assert(
      fc.property(ringLine, gentle, (line, waves) => {
        const fit = worked(line, askFor(1, 'blanket', { sizes: { repeat: 4, width: 2 }, waves }));
        const [stretch] = fit.stretches;
        if (!stretch?.waves) return;
        const [chain] = chainsOf(fit);
        expect(chain.closed).toBe(true);
        const turn = (2 * Math.PI) / stretch.waves.count;
        const far = (x: number, y: number) =>
          Math.min(
            ...Array.from({ length: chain.nodes.length / 2 }, (_, i) =>
              Math.hypot(chain.nodes[2 * i] - x, chain.nodes[2 * i + 1] - y),
            ),
          );
        // turned by a wave about the middle of the ring, every needle point falls on another
        const off = Array.from({ length: chain.nodes.length / 2 }, (_, i) => {
          const [dx, dy] = [chain.nodes[2 * i] - 100, chain.nodes[2 * i + 1] - 100];
          return far(
            100 + dx * Math.cos(turn) - dy * Math.sin(turn),
            100 + dx * Math.sin(turn) + dy * Math.cos(turn),
          );
        });
        expect(Math.max(...off)).toBeLessThan(0.1);
      }),
      { numRuns: 30 },
    );
  });

  test('stay within the swing of the waves and their own reach, whatever the stitch', () => {
    fc.assert(
      fc.property(fc.constantFrom(...stitchFiles.map(({ name }) => name)), gentle, (name, waves) => {
        const line = {
          kind: 'straight',
          points: [
            [10, 100],
            [150, 100],
          ],
        } as const;
        const ask = askFor(1, name, { waves });
        const { fit } = fitted(line, ask);
        const unit = stitchNamed(name).build({});
        const reach = Math.max(unit.reach.left, unit.reach.right) * Math.max(1, fit.scale!);
        for (const [x, y] of legPoints(chainsOf(fit))) {
          expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
          // a mitred outer point lies at most 1.5 reaches from its corner
          expect(Math.abs(y - 100)).toBeLessThan(waves.height / 2 + 1.5 * reach + 0.1);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('cover the seam as the plain treatment does: waves that are too steep for it are left away, and that is told', () => {
    const line = {
      kind: 'straight',
      points: [
        [10, 100],
        [130, 100],
      ],
    } as const;
    const waves: Waves = { shape: 'wave', height: 4, length: 8.5 };
    const { fit, findings } = fitted(
      line,
      askFor(1, 'herringbone', { sizes: { repeat: 3, width: 3 }, waves }),
    );
    expect(findings.map(({ code }) => code)).toContain('without-waves');
    expect(fit.stretches.map(({ waves: own }) => own)).toEqual([undefined]);
    expect(chainsOf(fit).length).toBe(1);
  });

  test('meet in the corners of a seam, whole on both sides, whether the stitch turns there or goes round', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('stem', 'split', 'blanket', 'herringbone', 'chevron'),
        gentle.map((waves) => ({ ...waves, length: waves.length / 1.5 })),
        fc.double({ min: 40, max: 119, noNaN: true }),
        fc.constantFrom(1, -1),
        fc.constantFrom('left' as const, 'right' as const),
        (stitch, waves, degrees, hand, side) => {
          const turn = (hand * degrees * Math.PI) / 180;
          const corner = [100, 100] as const;
          const points = [[40, 100], corner, [100 + 60 * Math.cos(turn), 100 - 60 * Math.sin(turn)]] as const;
          const sizes: Record<string, number> = stitch === 'stem' || stitch === 'split' ? {} : { width: 3 };
          const fit = worked({ kind: 'corner', points }, askFor(1, stitch, { side, sizes, waves }));
          fc.pre(fit.stretches.every(({ waves: own }) => own));
          expect(fit.stretches).toHaveLength(2);
          for (const { waves: own } of fit.stretches) expect(own!.count % 1).toBe(0);
          const [guide] = fit.guides;
          // how far beyond the corner the line crosses its bisector; inside it is negative
          const beyond: number[] = [];
          for (let i = 0; i + 3 < guide.length; i += 2) {
            const seen = (k: number) => {
              const [dx, dy] = [guide[k] - corner[0], guide[k + 1] - corner[1]];
              const across = dx * Math.cos(turn / 2) - dy * Math.sin(turn / 2);
              return [across, hand * (dx * Math.sin(turn / 2) + dy * Math.cos(turn / 2))] as const;
            };
            const [[a, from], [b, to]] = [seen(i), seen(i + 2)];
            if (a <= 0 !== b <= 0) beyond.push(from + ((to - from) * a) / (a - b));
          }
          expect(beyond).toHaveLength(1);
          const swing = (waves.height / 2) * fit.scale!;
          // told by chords of half a millimeter
          const near = 0.5;
          if (waves.shape === 'wave') expect(Math.abs(beyond[0])).toBeLessThan(near);
          if (waves.shape === 'points' && degrees < 89) expect(beyond[0]).toBeGreaterThan(0.5 * swing - near);
          // scallops never leave the corner bare, and nothing sharp goes far out over a sharp tip
          if (waves.shape === 'scallop') expect(beyond[0]).toBeGreaterThan(-near);
          if (waves.shape !== 'wave' && degrees > 91) expect(Math.abs(beyond[0])).toBeLessThan(near);
          expect(beyond[0]).toBeGreaterThan(-swing - near);
          expect(beyond[0]).toBeLessThan(1.5 * swing + near);
        },
      ),
      { numRuns: 80 },
    );
  });

  test('on points go over the corners of the seam, not across their inside, whichever way it turns', () => {
    const across: string[] = [];
    const cases = ['split', 'stem'].flatMap((stitch) =>
      [40, 70, 89, -40, -70, -89].map((degrees) => [stitch, degrees] as const),
    );
    for (const [stitch, degrees] of cases) {
      for (const side of ['left', 'right'] as const) {
        const turn = (degrees * Math.PI) / 180;
        const corner = [100, 100] as const;
        const points = [[40, 100], corner, [100 + 60 * Math.cos(turn), 100 - 60 * Math.sin(turn)]] as const;
        const waves: Waves = { shape: 'points', height: 3, length: 15 };
        const fit = worked({ kind: 'corner', points }, askFor(1, stitch, { side, waves }));
        const out = legPoints(chainsOf(fit))
          .map(([x, y]) => [x - corner[0], y - corner[1]])
          .filter(([dx, dy]) => Math.hypot(dx, dy) < 6)
          .map(([dx, dy]) => Math.sign(turn) * (dx * Math.sin(turn / 2) + dy * Math.cos(turn / 2)));
        const furthest = Math.max(...out);
        if (fit.stretches.some(({ waves: own }) => !own) || furthest < 1) {
          across.push(`${stitch}, ${degrees} degrees, ${side}: ${furthest.toFixed(2)} mm beyond the corner`);
        }
      }
    }
    expect(across).toEqual([]);
  });

  test('on points bring the thread right up to a corner over 90 degrees, with no stroke across its tip', () => {
    const wrong: string[] = [];
    for (const stitch of ['split', 'stem']) {
      for (const degrees of [100, 117, -100, -117]) {
        for (const side of ['left', 'right'] as const) {
          const turn = (degrees * Math.PI) / 180;
          const corner = [100, 100] as const;
          const end = [100 + 60 * Math.cos(turn), 100 - 60 * Math.sin(turn)] as const;
          const waves: Waves = { shape: 'points', height: 5, length: 24 };
          const fit = worked(
            { kind: 'corner', points: [[40, 100], corner, end] },
            askFor(1, stitch, { side, waves }),
          );
          const legs = chainsOf(fit).flatMap(({ path, pathStart, from, kind }) =>
            [...from.keys()]
              .filter((leg) => kind[leg] !== 'under')
              .map((leg) =>
                [pathStart[leg], pathStart[leg + 1] - 1].map((p) => [path[2 * p], path[2 * p + 1]]),
              ),
          );
          const away = legs.map(([a, b]) =>
            Math.min(...[a, b].map(([x, y]) => Math.hypot(x - 100, y - 100))),
          );
          const out = (x: number, y: number) =>
            Math.sign(turn) * ((x - 100) * Math.sin(turn / 2) + (y - 100) * Math.cos(turn / 2));
          const beyond = Math.max(...legs.flat().map(([x, y]) => out(x, y)));
          if (Math.min(...away) > 1.2 || beyond > 1.2) {
            wrong.push(
              `${stitch}, ${degrees}, ${side}: ${Math.min(...away).toFixed(2)}, ${beyond.toFixed(2)}`,
            );
          }
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  test('leave a seat on every top: what sits there stands beyond it, to the one hand and the other in turn', () => {
    fc.assert(
      fc.property(gentle, fc.double({ min: 2, max: 5, noNaN: true }), (waves, away) => {
        const line = {
          kind: 'straight',
          points: [
            [10, 100],
            [160, 100],
          ],
        } as const;
        const knots = {
          row: 0,
          seat: 'crest',
          figures: [sizedOrnament(ornamentNamed(builtIn, 'french-knot'), {})],
          threads: [''],
          byHand: null,
          passes: 3,
          every: 1,
          from: 0,
          turn: 0,
          away,
        };
        const { fit } = fitted(line, askFor(1, 'blanket', { sizes: narrow, waves, accents: [knots] }));
        const count = fit.stretches[0].waves!.count;
        const at = fit.layers
          .filter(({ kind }) => kind === 'accent')
          .flatMap(({ chains }) => chains)
          .map(({ nodes }) => [nodes[0], nodes[1] - 100]);
        const high = (waves.height / 2 + away) * fit.scale!;
        expect(at).toHaveLength(waves.shape === 'wave' ? 2 * count : count);
        const hands = at.map(([, y]) => Math.sign(-y));
        expect(hands).toEqual(hands.map((_, k) => (waves.shape === 'wave' && k % 2 === 1 ? -1 : 1)));
        for (const [, y] of at) expect(Math.abs(Math.abs(y) - high)).toBeLessThan(0.06);
      }),
      { numRuns: 40 },
    );
  });

  test('follow two interlaced lines: the second row is the first mirrored in the seam', () => {
    const mirrored = {
      sized: sized(stitchNamed('blanket'), narrow),
      side: 'right',
      passes: 3,
      offset: 0,
      times: 1,
      step: 0,
      mirrored: true,
    } as const;
    fc.assert(
      fc.property(
        straightLine,
        gentle.map((waves) => ({ ...waves, shape: 'wave' }) as const),
        (line, waves) => {
          const fit = worked(line, askFor(1, 'blanket', { sizes: narrow, waves, followers: [mirrored] }));
          const [one, other] = chainsOf(fit);
          expect(other.path.length).toBe(one.path.length);
          const off = Array.from(one.path, (value, i) =>
            Math.abs(i % 2 === 0 ? other.path[i] - value : other.path[i] + value - 200),
          );
          expect(Math.max(...off)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 30 },
    );
  });
});
