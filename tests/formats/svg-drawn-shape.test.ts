import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import type { DrawnLine } from '../../src/formats/line-drawing.js';
import { readSvgDrawing } from '../../src/formats/svg-drawing.js';
import { insideArea, signedArea } from '../../src/geometry/area.js';

const drawing = (body: string) =>
  readSvgDrawing(
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`,
    'test.svg',
  );
const patches = async (body: string) =>
  buildSeamMap(await drawing(body))
    .map.patches.map(({ area, fabric }) => ({ area, fabric }))
    .sort((a, b) => b.area - a.area);
const isCloth = (lines: readonly DrawnLine[], p: readonly [number, number]) =>
  lines.some(
    ({ fill, area, points }) => fill !== null && insideArea(p, area ?? { rings: [points], rule: 'evenodd' }),
  );

const out = (x: number, y: number, s: number) => `M${x} ${y} h${s} v${s} h${-s} z`;
const back = (x: number, y: number, s: number) => `M${x} ${y} v${s} h${s} v${-s} z`;

describe('a filled shape of several lines', () => {
  it.each([
    ['nonzero', back(20, 20, 10)],
    ['evenodd', back(20, 20, 10)],
    ['evenodd', out(20, 20, 10)],
  ])('has a hole: %s %s', async (rule, inner) => {
    expect(
      await patches(`<path fill="#123456" fill-rule="${rule}" d="${out(10, 10, 40)} ${inner}"/>`),
    ).toEqual([
      { area: expect.closeTo(1500, 6), fabric: '#123456' },
      { area: expect.closeTo(100, 6), fabric: null },
    ]);
  });

  it('is whole where the rule fills both, and the line inside it is no seam unless it is drawn', async () => {
    const d = `${out(10, 10, 40)} ${out(20, 20, 10)}`;
    expect(await patches(`<path fill="#123456" d="${d}"/>`)).toEqual([
      { area: expect.closeTo(1600, 6), fabric: '#123456' },
    ]);
    expect(await patches(`<path fill="#123456" stroke="#000" d="${d}"/>`)).toEqual([
      { area: expect.closeTo(1500, 6), fabric: '#123456' },
      { area: expect.closeTo(100, 6), fabric: '#123456' },
    ]);
  });

  it('lets the fabric beneath be seen through its window', async () => {
    const above = `<path style="fill:#abcdef;fill-rule:evenodd" d="${out(10, 10, 40)} ${out(20, 20, 10)}"/>`;
    const found = await patches(`<rect x="10" y="10" width="40" height="40" fill="#111111"/>${above}`);
    expect(found.map(({ fabric }) => fabric)).toEqual(['#abcdef', '#111111']);
  });

  it('keeps its curves: a ring between circles of 30 and 20 mm', async () => {
    const circle = (r: number, sweep: number) =>
      `M${50 + r} 50 A${r} ${r} 0 1 ${sweep} ${50 - r} 50 A${r} ${r} 0 1 ${sweep} ${50 + r} 50z`;
    const { lines } = await drawing(`<path fill="#123456" d="${circle(30, 0)} ${circle(20, 1)}"/>`);
    for (const { points } of lines) {
      const r = Math.sqrt(Math.abs(signedArea(points)) / Math.PI) > 25 ? 30 : 20;
      for (let i = 0; i < points.length; i += 2) {
        expect(Math.abs(Math.hypot(points[i] - 50, points[i + 1] - 50) - r)).toBeLessThan(1e-4);
      }
    }
    expect([isCloth(lines, [50, 50]), isCloth(lines, [75, 50])]).toEqual([false, true]);
  });

  it('side by side is two patches', async () => {
    const { lines } = await drawing(`<path fill="#123456" d="${out(10, 10, 20)} ${out(60, 10, 20)}"/>`);
    expect(lines.map(({ fill, area }) => [fill, area])).toEqual([
      ['#123456', undefined],
      ['#123456', undefined],
    ]);
  });
});

describe('a filled line that crosses itself', () => {
  it('has cloth in both loops of a figure eight', async () => {
    expect(await patches('<path fill="#123456" d="M10 10 L50 50 V10 L10 50z"/>')).toEqual([
      { area: expect.closeTo(400, 6), fabric: '#123456' },
      { area: expect.closeTo(400, 6), fabric: '#123456' },
    ]);
  });

  it.each([
    ['nonzero', true],
    ['evenodd', false],
  ])('in a star of five points: %s', async (rule, middle) => {
    const tips = [0, 2, 4, 1, 3].map((k) => (k * 2 * Math.PI) / 5);
    const points = tips.map((a) => `${50 + 40 * Math.sin(a)},${50 - 40 * Math.cos(a)}`).join(' ');
    const { lines } = await drawing(`<polygon fill="#123456" fill-rule="${rule}" points="${points}"/>`);
    expect(isCloth(lines, [50, 20])).toBe(true);
    expect(isCloth(lines, [50, 50])).toBe(middle);
  });
});

describe('what a fill covers', () => {
  /** How often a line winds round a point: the sum of the angles under which its sides are seen. */
  const winding = (ring: readonly (readonly [number, number])[], [x, y]: readonly [number, number]) =>
    Math.round(
      ring.reduce((sum, [ax, ay], i) => {
        const [bx, by] = ring[(i + 1) % ring.length];
        const [px, py, qx, qy] = [ax - x, ay - y, bx - x, by - y];
        return sum + Math.atan2(px * qy - py * qx, px * qx + py * qy);
      }, 0) /
        (2 * Math.PI),
    );
  const odd = (n: number) => Math.abs(n) % 2 === 1;

  it.each(['nonzero', 'evenodd'] as const)('is bounded by lines with cloth on one side: %s', async (rule) => {
    // the corners of a regular figure in any order: with an odd number of them no three diagonals meet in a point
    const star = fc.constantFrom(5, 7, 9).chain((n) =>
      fc.shuffledSubarray(
        [...Array(n).keys()].map((k) => (2 * Math.PI * k) / n),
        { minLength: 4 },
      ),
    );
    await fc.assert(
      fc.asyncProperty(star, async (all) => {
        const d = `M${all.map((a) => `${50 + 40 * Math.sin(a)} ${50 - 40 * Math.cos(a)}`).join(' L')}z`;
        const { lines } = await drawing(`<path fill="#123456" fill-rule="${rule}" d="${d}"/>`);
        const { map } = buildSeamMap({ width: 100, height: 100, origin: [0, 0], lines }, { snap: 0.001 });
        for (const { sides } of map.seams) {
          for (const { left, right } of sides) {
            const cloth = [left, right].map((id) => id !== null && map.patches[id - 1].fabric !== null);
            expect(cloth[0]).not.toBe(cloth[1]);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  // on a grid, so that lines often meet in corners and lie on each other; the points looked at lie off it
  const corner = fc.tuple(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 8 }));
  const rings = fc.array(fc.array(corner, { minLength: 3, maxLength: 7 }), { minLength: 1, maxLength: 4 });
  const places = Array.from({ length: 64 }, (_, k): [number, number] => [
    10 * (k % 8) + 5.317,
    10 * Math.floor(k / 8) + 4.891,
  ]);

  it.each(['nonzero', 'evenodd'] as const)(
    'is what the rule says, whatever the lines do: %s',
    async (rule) => {
      await fc.assert(
        fc.asyncProperty(rings, async (all) => {
          const placed = all.map((ring) => ring.map(([x, y]): [number, number] => [10 * x, 10 * y]));
          const d = placed.map((ring) => `M${ring.map((p) => p.join(' ')).join(' L')}z`).join(' ');
          const turns = (p: [number, number]) => placed.reduce((sum, ring) => sum + winding(ring, p), 0);
          const filled = (p: [number, number]) => (rule === 'nonzero' ? turns(p) !== 0 : odd(turns(p)));
          const read = await drawing(`<path fill="#123456" fill-rule="${rule}" d="${d}"/>`).catch(() => null);
          if (read) expect(places.map((p) => isCloth(read.lines, p))).toEqual(places.map(filled));
        }),
        { numRuns: 100 },
      );
    },
  );
});
