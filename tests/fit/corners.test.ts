import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chain } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { askFor, chainsOf, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

const RULES = { gap: 0.6, outline: 'free' } as const;
const CORNER = [100, 100] as const;

/** Two sides of 40 mm that meet at (100, 100); coming in along +x, turning by `turn` (positive to the left). */
const bent = (turn: number) =>
  mapOfLines([[[60, 100], CORNER, [100 + 40 * Math.cos(turn), 100 - 40 * Math.sin(turn)]]]);

const arms = (chain: Chain, legClass: number): [number, number, number, number][] =>
  Array.from({ length: chain.from.length }, (_, leg) => leg)
    .filter((leg) => chain.legClass[leg] === legClass)
    .map((leg) => {
      const [a, b] = [chain.from[leg], chain.to[leg]];
      return [chain.nodes[2 * a], chain.nodes[2 * a + 1], chain.nodes[2 * b], chain.nodes[2 * b + 1]];
    });

function cross(p: readonly number[], q: readonly number[]): boolean {
  const side = (ax: number, ay: number, bx: number, by: number, x: number, y: number) =>
    (bx - ax) * (y - ay) - (by - ay) * (x - ax);
  const [ax, ay, bx, by] = p;
  const [cx, cy, dx, dy] = q;
  const eps = 1e-6;
  return (
    side(ax, ay, bx, by, cx, cy) * side(ax, ay, bx, by, dx, dy) < -eps &&
    side(cx, cy, dx, dy, ax, ay) * side(cx, cy, dx, dy, bx, by) < -eps
  );
}

const turns = fc.double({ min: 0.45, max: 2.05, noNaN: true });
/** Above this the corner would lie bare beside an arc that a reach of 3 mm needs, and is broken. */
const staysCovered = (turn: number) => Math.abs(turn) < 1.95;
const either = fc.constantFrom('left' as const, 'right' as const);

describe('a corner that is turned', () => {
  test('blanket: arms stay apart on the inner and on the outer side, from 26 to 117 degrees', () => {
    fc.assert(
      fc.property(
        turns,
        either,
        fc.boolean(),
        fc.double({ min: 3, max: 8, noNaN: true }),
        (turn, side, flip, width) => {
          const map = bent(flip ? -turn : turn);
          expect(map.seams[0].corners).toHaveLength(1);
          const [{ fit }] = fitLines(map, [askFor(1, 'blanket', { side, sizes: { width } })], RULES);
          expect(fit.stretches).toHaveLength(2);
          const armClass = askFor(1, 'blanket')
            .sized.build(1, 5)
            .legs.find((leg) => leg.name === 'arm')!.class;
          const list = chainsOf(fit).flatMap((chain) => arms(chain, armClass));
          for (let i = 0; i < list.length; i++) {
            for (let j = i + 1; j < list.length; j++) expect(cross(list[i], list[j])).toBe(false);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('blanket: one diagonal arm stands on the bisector, no further out than one and a half reaches', () => {
    fc.assert(
      fc.property(turns, either, (turn, side) => {
        const map = bent(turn);
        const [{ fit }] = fitLines(map, [askFor(1, 'blanket', { side, sizes: { width: 6 } })], RULES);
        const armClass = askFor(1, 'blanket')
          .sized.build(1, 5)
          .legs.find((leg) => leg.name === 'arm')!.class;
        const atCorner = chainsOf(fit)
          .flatMap((chain) => arms(chain, armClass))
          .map(([ax, ay, bx, by]) =>
            Math.hypot(ax - CORNER[0], ay - CORNER[1]) < Math.hypot(bx - CORNER[0], by - CORNER[1])
              ? [ax, ay, bx, by]
              : [bx, by, ax, ay],
          )
          .filter(([ax, ay]) => Math.hypot(ax - CORNER[0], ay - CORNER[1]) < 0.5);
        expect(atCorner).toHaveLength(1);
        const [, , x, y] = atCorner[0];
        // The inner bisector of a left turn points to the left of the way in: straight up turned by half the turn.
        const out = [x - CORNER[0], y - CORNER[1]];
        const bisector = [Math.sin(turn / 2), Math.cos(turn / 2)];
        const off = Math.abs(out[0] * bisector[1] - out[1] * bisector[0]);
        expect(off).toBeLessThan(0.35);
        expect(Math.hypot(out[0], out[1])).toBeLessThanOrEqual(1.5 * 6 + 0.1);
      }),
      { numRuns: 60 },
    );
  });

  test('each side keeps to its own side of the bisector (to the arm that is shared)', () => {
    fc.assert(
      fc.property(turns, (turn) => {
        const map = bent(turn);
        const [{ fit }] = fitLines(
          map,
          [askFor(1, 'blanket', { side: 'right', sizes: { width: 6 } })],
          RULES,
        );
        for (const chain of chainsOf(fit)) {
          const sides = new Map<number, number>();
          for (let leg = 0; leg < chain.from.length; leg++) {
            for (let p = chain.pathStart[leg]; p < chain.pathStart[leg + 1]; p++) {
              const dx = chain.path[2 * p] - CORNER[0];
              const dy = chain.path[2 * p + 1] - CORNER[1];
              // Positive beyond the bisector, seen along the mean heading of the two sides.
              const along = dx * Math.cos(turn / 2) - dy * Math.sin(turn / 2);
              if (Math.abs(along) < 0.4) continue;
              const side = sides.get(chain.unit[leg]) ?? Math.sign(along);
              sides.set(chain.unit[leg], side);
              expect(Math.sign(along)).toBe(side);
            }
          }
          expect(new Set(sides.values()).size).toBe(2);
        }
      }),
      { numRuns: 40 },
    );
  });
});

/** Two sides of 40 mm whose row starts with the given hand. */
const roundTheBend = (stitch: string, turn: number, side: 'left' | 'right') =>
  fitLines(bent(turn), [askFor(1, stitch, { side })], RULES)[0].fit;

const eitherTurn = fc
  .tuple(turns, fc.constantFrom(1, -1))
  .map(([turn, hand]) => turn * hand)
  .filter((turn) => Math.abs(turn) > 0.9);
const goingRound = fc.constantFrom('herringbone', 'chevron');

describe('a corner that is rounded', () => {
  test('herringbone goes round it in one piece, nowhere further off than its reach and the rounding', () => {
    fc.assert(
      fc.property(turns.filter(staysCovered), (turn) => {
        const map = bent(turn);
        const [{ fit }] = fitLines(map, [askFor(1, 'herringbone', { sizes: { width: 6 } })], RULES);
        expect(chainsOf(fit)).toHaveLength(1);
        expect(fit.stretches).toHaveLength(1);
        const away = Math.min(3, (3 / 0.42) * (1 / Math.cos(turn / 2) - 1));
        for (const [x, y] of legPoints(chainsOf(fit))) {
          const first = y - 100;
          const second = (x - 100) * Math.sin(turn) + (y - 100) * Math.cos(turn);
          expect(Math.min(Math.abs(first), Math.abs(second))).toBeLessThanOrEqual(3 + away + 0.2);
        }
      }),
      { numRuns: 40 },
    );
  });

  // Christie, Embroidery and Tapestry Weaving, 1912, figure 63 (figure seen): the band is carried round a bend evenly.
  test('an outer stroke or bar stands at its middle, the others evenly to both sides', () => {
    fc.assert(
      fc.property(goingRound, eitherTurn.filter(staysCovered), either, (stitch, turn, side) => {
        const points = [...legPoints(chainsOf(roundTheBend(stitch, turn, side)))];
        // Seen along the bisector (outwards) and across it.
        const half = turn / 2;
        const seen = points.map(([x, y]) => {
          const [dx, dy] = [x - CORNER[0], y - CORNER[1]];
          const across = dx * Math.cos(half) - dy * Math.sin(half);
          return [Math.sign(turn) * (dx * Math.sin(half) + dy * Math.cos(half)), across];
        });
        const near = seen.filter(([out, across]) => Math.hypot(out, across) < 5);
        const mirrored = ([out, across]: number[]) =>
          Math.min(...seen.map(([o, a]) => Math.hypot(o - out, a + across)));
        expect(Math.max(...near.map(mirrored))).toBeLessThan(0.9);
        const outermost = Math.max(...near.map(([out]) => out));
        // Where the turn leaves room for it, as far out as the corner itself.
        const short = Math.max(0, (3 / 0.6) * (1 / Math.cos(half) - 1) - 3);
        expect(outermost).toBeGreaterThan(-short - 0.9);
      }),
      { numRuns: 60 },
    );
  });

  test('strokes on its inside keep two fifths of their distance at a right angle', () => {
    fc.assert(
      fc.property(goingRound, either, (stitch, side) => {
        const [chain] = chainsOf(roundTheBend(stitch, Math.PI / 2, side));
        const inner: number[][] = [];
        for (let i = 0; i < chain.nodes.length; i += 2) {
          const [dx, dy] = [chain.nodes[i] - CORNER[0], chain.nodes[i + 1] - CORNER[1]];
          // Turning to the left: above the line and left of it is inside.
          if (dx < -2 && dy < -2) inner.push([dx, dy]);
        }
        const gaps = inner.flatMap((p, i) =>
          inner.slice(i + 1).map((q) => Math.hypot(p[0] - q[0], p[1] - q[1])),
        );
        expect(inner.length).toBeGreaterThan(2);
        expect(Math.min(...gaps)).toBeGreaterThan(0.4 * 1.2);
      }),
      { numRuns: 4 },
    );
  });
});

describe('a corner that is broken', () => {
  test('over 120 degrees a treatment finishes and starts anew, and its two parts keep clear of each other', () => {
    for (const degrees of [125, 140, 155]) {
      const map = bent((degrees * Math.PI) / 180);
      const [{ fit }] = fitLines(map, [askFor(1, 'feather', { sizes: { width: 4 } })], RULES);
      expect(fit.stretches.map(({ ends }) => ends)).toEqual([
        ['free', 'corner'],
        ['corner', 'free'],
      ]);
      // where the point would stay bare a plain line joins the two
      const [a, b, ...plain] = chainsOf(fit).map((chain) => legPoints([chain]));
      expect(plain.length).toBeLessThanOrEqual(1);
      let least = Infinity;
      for (const [x, y] of a) for (const [p, q] of b) least = Math.min(least, Math.hypot(x - p, y - q));
      expect(least).toBeGreaterThanOrEqual(0.6 - 1e-6);
    }
  });
});
