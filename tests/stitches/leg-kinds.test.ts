import { Bezier } from 'bezier-js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkStitchFile } from '../../src/stitches/check.js';
import { curvePath, loopPaths } from '../../src/stitches/leg-path.js';
import { parseStitch } from '../../src/stitches/parse.js';
import { endsOf, legNamed, nodeAt } from './dictionary.js';

/** A sampler of every kind of leg, as a maker might write it. */
const sampler = {
  format: 1,
  title: 'Sampler',
  otherNames: [],
  family: 'trial',
  for: 'One leg of every kind.',
  sources: [],
  parameters: {
    repeat: { title: 'Repeat', unit: 'mm', default: 10, min: 5, max: 20 },
    width: { title: 'Width', unit: 'mm', default: 6, min: 3, max: 12 },
  },
  symmetry: 'none',
  halves: false,
  corner: 'break',
  growth: 'mirror',
  smallest: { repeat: 5, width: 3 },
  points: {
    a: [0, 0],
    b: ['length', 0],
    c: ['length / 2', 'width / 2'],
    d: ['length / 2', '-width / 2'],
    e: [2, 1],
  },
  legs: [
    { name: 'line', kind: 'straight', from: 'a', to: 'b' },
    { name: 'bow', kind: 'curve', from: 'a', via: ['c'], to: 'b', share: 0.5 },
    { name: 'petal loop', kind: 'loop', base: 'a', tip: 'c', width: 'width / 4', keepsShapeAt: 'a' },
    { name: 'dot', kind: 'knot', at: 'c', size: 1.5 },
    { name: 'leaf', kind: 'petal', base: 'a', tip: 'd', width: 2, keepsShapeAt: 'a' },
    { name: 'stem', kind: 'cord', from: 'a', via: ['e', 'd'], to: 'b', width: 1 },
    { name: 'travel', kind: 'under', from: 'c', via: ['e'], to: 'b' },
    { name: 'last', kind: 'straight', from: 'a', to: 'c', onlyAtEnd: true },
  ],
  joins: { b: 'a' },
  closing: ['petal loop'],
};
const unit = parseStitch(sampler, 'sampler').build({});

describe('kinds of leg', () => {
  test('all can be written in one file, which is sound', async () => {
    expect(await checkStitchFile(sampler, 'sampler.json')).toEqual([]);
    expect(unit.legs.map(({ kind }) => kind)).toEqual([
      'straight',
      'curve',
      'loop',
      'loop',
      'knot',
      'petal',
      'cord',
      'under',
    ]);
    expect(unit.ending.map(({ name }) => name)).toEqual(['last']);
  });

  test('all run from hole to hole', () => {
    for (const leg of [...unit.legs, ...unit.ending]) {
      expect(endsOf(leg)).toEqual([nodeAt(unit, leg.from), nodeAt(unit, leg.to)]);
    }
  });

  test('a loop is two halves of one class, out and back, both drawn again where it closes a row', () => {
    const halves = unit.legs.filter(({ name }) => name === 'petal loop');
    expect(halves.map((half) => half.class)).toEqual([2, 2]);
    expect([halves[0].from, halves[0].to]).toEqual([halves[1].to, halves[1].from]);
    expect(unit.closing.map((i) => unit.legs[i])).toEqual(halves);
    expect(unit.legs.map((leg) => leg.class)).toEqual([0, 1, 2, 2, 3, 4, 5, 6]);
  });

  test('a knot stays in its hole; knots, petals and cords have a size, threads have none', () => {
    expect(legNamed(unit, 'dot').from).toBe(legNamed(unit, 'dot').to);
    expect(unit.legs.map(({ size }) => size)).toEqual([0, 0, 0, 0, 1.5, 2, 1, 0]);
  });

  test('size counts as reach', () => {
    expect(unit.reach.left).toBe(3 + 1.5 / 2);
    expect(unit.reach.right).toBe(3 + 2 / 2);
  });

  test('an under-leg asks for no thread to be seen, others for their share', () => {
    expect(unit.legs.map(({ share }) => share)).toEqual([1, 0.5, 1, 1, 1, 1, 1, 0]);
    expect([...legNamed(unit, 'travel').path]).toEqual([5, 3, 2, 1, 10, 0]);
  });

  test('a leg bends with the line unless it keeps its shape about a hole', () => {
    const stiff = unit.legs.filter(({ bends }) => !bends);
    expect(new Set(stiff.map(({ name }) => name))).toEqual(new Set(['petal loop', 'leaf']));
    for (const leg of stiff) expect(nodeAt(unit, leg.anchor)).toEqual([0, 0]);
  });
});

const coordinate = fc.double({ min: -20, max: 20, noNaN: true, noDefaultInfinity: true });
const point = fc.tuple(coordinate, coordinate);

// bezier-js, another hand's curves.
test.each([3, 4])('a curve of %d points runs where another library says, ends exact', (count) => {
  fc.assert(
    fc.property(fc.array(point, { minLength: count, maxLength: count }), (points) => {
      const path = curvePath(points);
      const theirs = new Bezier(points.flat());
      const chords = path.length / 2 - 1;
      for (let i = 0; i <= chords; i++) {
        const { x, y } = theirs.get(i / chords);
        expect(Math.hypot(path[2 * i] - x, path[2 * i + 1] - y)).toBeLessThan(1e-9);
      }
      const ends = [path[0], path[1], path[2 * chords], path[2 * chords + 1]];
      // + 0 takes the sign from a zero
      expect(ends.map((x) => x + 0)).toEqual([...points[0], ...points[count - 1]].map((x) => x + 0));
    }),
  );
});

test('a loop is as wide as asked, both halves alike, narrow at its hole and round at its tip', () => {
  fc.assert(
    fc.property(point, point, fc.double({ min: 0.5, max: 4, noNaN: true }), (base, tip, width) => {
      const long = Math.hypot(tip[0] - base[0], tip[1] - base[1]);
      fc.pre(long > 2);
      const [out, back] = loopPaths(base, tip, width);
      const frame = (path: Float64Array) =>
        Array.from({ length: path.length / 2 }, (_, i) => {
          const [x, y] = [path[2 * i] - base[0], path[2 * i + 1] - base[1]];
          const [dx, dy] = [(tip[0] - base[0]) / long, (tip[1] - base[1]) / long];
          return { along: x * dx + y * dy, across: -x * dy + y * dx };
        });
      const left = frame(out);
      const right = frame(back).reverse();
      left.forEach((at, i) => {
        expect(at.along).toBeCloseTo(right[i].along, 6);
        expect(at.across).toBeCloseTo(-right[i].across, 6);
        expect(at.across).toBeGreaterThan(-1e-9);
      });
      const widest = left.reduce((most, at) => (at.across > most.across ? at : most));
      expect(widest.across).toBeLessThanOrEqual(width / 2 + 1e-9);
      expect(widest.across).toBeGreaterThan(0.48 * width);
      expect(widest.along).toBeGreaterThan(long / 2);
    }),
  );
});
