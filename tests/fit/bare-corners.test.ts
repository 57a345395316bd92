import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SeamFit } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import type { LineFit } from '../../src/fit/line-fit.js';
import type { Stitch } from '../../src/stitches/stitch.js';
import { dictionary, stitchNamed } from '../stitches/dictionary.js';
import { askFor, chainsOf } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

type XY = readonly [number, number];

const RULES = { gap: 0.6, outline: 'free' } as const;
const SIDE = 50;
const CORNER: XY = [150, 150];

interface Bent {
  readonly stitch: string;
  /** what it does at corners, if not what it does by itself */
  readonly corner?: Stitch['corner'];
  readonly keepsRound?: boolean;
  /** degrees, to the left as seen */
  readonly turn: number;
  readonly side: 'left' | 'right';
}

const seamAt =
  (turn: number) =>
  (s: number): XY => {
    const angle = s < 0 ? 0 : (turn * Math.PI) / 180;
    return [CORNER[0] + s * Math.cos(angle), CORNER[1] - s * Math.sin(angle)];
  };

/** A seam of two sides of 50 mm. */
function fitted({ stitch, corner, keepsRound, turn, side }: Bent): LineFit {
  const at = seamAt(turn);
  const ask = askFor(1, stitch, { side, ...(keepsRound && { keepsRound }) });
  const known = stitchNamed(stitch);
  const sized = { ...ask.sized, stitch: { ...known, corner: corner ?? known.corner } };
  return fitLines(mapOfLines([[at(-SIDE), CORNER, at(SIDE)]], 300, 300), [{ ...ask, sized }], RULES)[0];
}

/** How far places every 0.25 mm along the seam lie from thread, mm; -45 to 45 from its corner. */
function away(fit: SeamFit, turn: number): { s: number; far: number }[] {
  const at = seamAt(turn);
  const pieces: number[][] = chainsOf(fit).flatMap(({ from, kind, path, pathStart }) =>
    [...from.keys()]
      .filter((leg) => kind[leg] !== 'under')
      .flatMap((leg) => {
        const points = [...path.subarray(2 * pathStart[leg], 2 * pathStart[leg + 1])];
        if (points.length === 2) return [[...points, ...points]];
        return Array.from({ length: points.length / 2 - 1 }, (_, i) => points.slice(2 * i, 2 * i + 4));
      }),
  );
  return Array.from({ length: 361 }, (_, k) => {
    const s = k / 4 - 45;
    const [x, y] = at(s);
    let least = Infinity;
    for (const [ax, ay, bx, by] of pieces) {
      const [dx, dy] = [bx - ax, by - ay];
      const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      least = Math.min(least, (x - ax - t * dx) ** 2 + (y - ay - t * dy) ** 2);
    }
    return { s, far: Math.sqrt(least) };
  });
}

/** The longest stretch further than 1.5 mm from thread among those that come into a part of the seam. */
function longestBare(places: readonly { s: number; far: number }[], isIn: (s: number) => boolean): number {
  let [most, since, last] = [0, false, places[0].s];
  for (const { s, far } of places) {
    if (far <= 1.5) {
      if (since) most = Math.max(most, s - last);
      [since, last] = [false, s];
    } else since ||= isIn(s);
  }
  return most;
}

const turns = fc
  .tuple(fc.double({ min: 20, max: 160, noNaN: true }), fc.constantFrom(1, -1))
  .map(([turn, hand]) => turn * hand);

describe('the seam about a corner of 20 to 160 degrees', () => {
  test('lies no more than 3 mm further from thread than on a straight, and no 3 mm more of it are bare, whatever the stitch does there', () => {
    const wrong: string[] = [];
    let seed = 0;
    for (const { name: stitch, corner: own } of dictionary) {
      for (const corner of new Set([own, 'turn', 'break'] as const)) {
        const cases = fc.sample(fc.record({ turn: turns, side: fc.constantFrom('left', 'right') }), {
          numRuns: 6,
          seed: seed++,
        });
        for (const { turn, side } of cases) {
          const places = away(fitted({ stitch, corner, turn, side }).fit, turn);
          const far = (isIn: (s: number) => boolean) =>
            Math.max(...places.filter(({ s }) => isIn(s)).map(({ far }) => far));
          const isStraight = (s: number) => Math.abs(s) > 15 && Math.abs(s) < 40;
          const further = far((s) => Math.abs(s) <= 10) - far(isStraight);
          const barer = longestBare(places, (s) => Math.abs(s) <= 10) - longestBare(places, isStraight);
          // places are looked at every quarter of a millimeter
          if (further > 3 || barer > 3 + 0.25) {
            const told = `${further.toFixed(1)} mm further, ${barer.toFixed(1)} mm more bare`;
            wrong.push(`${stitch}, ${corner}, ${turn.toFixed(0)} degrees, ${side}: ${told}`);
          }
        }
      }
    }
    expect(wrong).toEqual([]);
  }, 120_000);

  test('is gone round where the outer strokes cover it, and broken where every arc would leave it bare', () => {
    const pieces = (stitch: string, turn: number, keepsRound = false) =>
      fitted({ stitch, keepsRound, turn, side: 'left' }).fit.stretches.length;
    for (const stitch of ['cross', 'herringbone', 'closed-herringbone', 'chevron', 'pistil']) {
      expect(`${stitch} ${pieces(stitch, 80)}`).toBe(`${stitch} 1`);
    }
    for (const stitch of ['cross', 'closed-herringbone', 'tied-herringbone', 'pistil']) {
      expect(`${stitch} ${pieces(stitch, 118)}`).toBe(`${stitch} 2`);
      // whoever asks for it gets it
      expect(`${stitch} ${pieces(stitch, 118, true)}`).toBe(`${stitch} 1`);
    }
  });
});
