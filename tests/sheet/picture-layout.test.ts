import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { HoopPlan } from '../../src/sheet/hoop-plan.js';
import { shownBox } from '../../src/sheet/hoop-plan.js';
import { PAPERS } from '../../src/sheet/page-sizes.js';
import { pictureLayout } from '../../src/sheet/picture-layout.js';

const box = (width: number, height: number) => ({ left: 0, top: 0, right: width, bottom: height });
const plan = (work: [number, number], field: [number, number] | null): HoopPlan => ({
  work: box(...work),
  field: field && box(...field),
  middle: [0, 0],
  start: [0, 0],
});
const layout = (
  work: [number, number],
  field: [number, number] | null,
  paper: 'a4' | 'letter' = 'a4',
  asked?: 'actual' | 'smaller',
) => pictureLayout({ field: { width: work[0], height: work[1] } }, plan(work, field), paper, asked);

describe('the picture on its page', () => {
  test.each([
    [100, 100],
    [130, 180],
    [200, 200],
    [160, 260],
  ] as const)(
    'a sewing field of %d x %d mm is drawn whole, at actual size, on A4 upright',
    (width, height) => {
      const { scale, page, plan: drawn } = layout([width, height], [width, height]);
      expect(scale).toBe(1);
      expect(page).toEqual(PAPERS.a4);
      expect(drawn.field).not.toBeNull();
    },
  );

  test('work that lies wide has its page lying', () => {
    const { page, scale } = layout([250, 120], null);
    expect(page).toEqual({ width: 297, height: 210 });
    expect(scale).toBe(1);
  });

  test('work at actual size matters more than the lines of its field', () => {
    const { scale, plan: drawn } = layout([150, 220], [200, 300]);
    expect(scale).toBe(1);
    expect(drawn.field).toBeNull();
  });

  test('work in a field that is larger than the page is drawn smaller, by a whole number of hundredths', () => {
    const { scale } = layout([200, 300], [200, 300]);
    expect(scale).toBeGreaterThan(0.8);
    expect(scale).toBeLessThan(1);
    expect(scale * 100).toBeCloseTo(Math.round(scale * 100), 9);
  });

  test('work larger than page and field is refused, or drawn smaller when that is asked', () => {
    expect(() => layout([325, 450], null)).toThrow(
      /325\.0 x 450\.0 mm.*A4 \(210 x 297 mm\).*--picture smaller/,
    );
    expect(() => layout([200, 300], [200, 300], 'a4', 'actual')).toThrow(/--picture smaller/);
    expect(layout([325, 450], null, 'a4', 'smaller').scale).toBeLessThan(0.6);
  });

  test('whatever its size, it lies on its page', () => {
    const length = fc.double({ min: 5, max: 3000, noNaN: true });
    fc.assert(
      fc.property(length, length, fc.constantFrom('a4', 'letter'), (width, height, paper) => {
        const { page, scale, plan: drawn } = layout([width, height], null, paper, 'smaller');
        const { right, bottom } = shownBox(drawn);
        expect(scale).toBeGreaterThan(0);
        expect(right * scale).toBeLessThanOrEqual(page.width - 10 + 1e-6);
        expect(bottom * scale).toBeLessThanOrEqual(page.height - 37 + 1e-6);
      }),
    );
  });
});
