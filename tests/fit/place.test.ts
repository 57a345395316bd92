import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evenBand } from '../../src/fit/band.js';
import type { Laying } from '../../src/fit/lay.js';
import { cornerMitre } from '../../src/fit/mitre.js';
import { placeUnits } from '../../src/fit/place.js';
import { sized } from '../../src/fit/sized.js';
import type { Placing } from '../../src/fit/unit-places.js';
import { guideFromLine } from '../../src/geometry/guide-from-line.js';
import { dictionary } from '../stitches/dictionary.js';

/** A hand that works evenly, but lays every unit by itself. */
const oneByOne = { seed: 1, tips: 0, lengths: 0, turn: 0 };
const RADIUS = 40;

/** Straight, then round a bend, then straight again; or straight to a corner and on. */
function lineTo(bend: boolean): Laying['guide'] {
  const points = [0, 0, 120, 0];
  if (bend) {
    for (let i = 1; i <= 30; i++) {
      points.push(120 + RADIUS * Math.sin(i / 30), RADIUS - RADIUS * Math.cos(i / 30));
    }
  }
  const [x, y] = points.slice(-2);
  points.push(x + 90 * Math.cos(1), y + 90 * Math.sin(1));
  return guideFromLine(Float64Array.from(points), bend ? [] : [{ u: 120, turn: -1 }], false);
}

function placingOf(stitch: (typeof dictionary)[number], bend: boolean, share: number): Placing {
  const { build, glide, repeat } = sized(stitch, {});
  const guide = lineTo(bend);
  const corners = guide.corners.map(({ u }) => u);
  const bounds = [0, ...corners, guide.length];
  const lengths = bounds.slice(1).map((u, i) => u - bounds[i]);
  const counts = lengths.map((length) => Math.max(1, Math.round(length / repeat / share)));
  const units = lengths.map((length, i) => build(1, length / counts[i]));
  const reach = { left: units[0].reach.left + 1, right: units[0].reach.right + 1 };
  const doubled = guide.u.findIndex((u, k) => k > 0 && u === guide.u[k - 1]);
  const last = guide.u.length - 1;
  const none = { start: null, end: null, startPoint: null, endPoint: null };
  const turn = (length: number, i: number) =>
    cornerMitre(guide.corners[0].turn, reach, length / counts[i], length);
  const parts = corners.length
    ? [
        { ...none, from: 0, to: corners[0], first: 0, last: doubled - 1, end: turn(lengths[0], 0) },
        { ...none, from: corners[0], to: guide.length, first: doubled, last, start: turn(lengths[1], 1) },
      ]
    : [{ ...none, from: 0, to: guide.length, first: 0, last }];
  const perRepeat = glide ? 2 : 1;
  return {
    laying: { guide, parts, band: evenBand(guide, reach), built: reach, closed: false, offset: 0 },
    runs: units.map((unit, i) => ({
      unit,
      count: counts[i] * perRepeat,
      from: bounds[i],
      length: lengths[i] / counts[i] / perRepeat,
    })),
    closed: false,
    hand: 1,
    alternate: glide,
    passes: 3,
    beside: 0,
  };
}

describe('units on a straight', () => {
  test('are laid as each would be by itself, whatever the stitch and what the line does before and after', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...dictionary),
        fc.boolean(),
        fc.double({ min: 0.9, max: 1.1, noNaN: true }),
        (stitch, bend, share) => {
          const placing = placingOf(stitch, bend, share);
          const moved = placeUnits(placing);
          const alone = placeUnits({ ...placing, uneven: oneByOne });
          const names = ['from', 'to', 'legClass', 'unit', 'passes', 'kind', 'size', 'pathStart'] as const;
          for (const name of names) expect(moved[name]).toEqual(alone[name]);
          const off = (a: Float64Array, b: Float64Array) =>
            a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i])), 0);
          expect(moved.nodes.length).toBe(alone.nodes.length);
          expect(off(moved.nodes, alone.nodes)).toBeLessThan(1e-9);
          expect(off(moved.path, alone.path)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 120 },
    );
  });
});
