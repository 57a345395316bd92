import { describe, expect, test } from 'vitest';
import { hoopFindings, roomFindings, sewnField } from '../../src/check/hoop.js';

const hoop = { width: 130, height: 180 };

describe('the sewing field', () => {
  test('holds a block in either orientation', () => {
    expect(hoopFindings(hoop, { width: 130, height: 180 })).toEqual([]);
    expect(hoopFindings(hoop, { width: 180, height: 130 })).toEqual([]);
    expect(hoopFindings(null, { width: 900, height: 900 })).toEqual([]);
  });

  test('that is too small is an error, with the scale that would fit', () => {
    const [found] = hoopFindings(hoop, { width: 200, height: 150 });
    expect(found.level).toBe('error');
    // turned, 150 into 130 and 200 into 180: the tighter of 86.7 % and 90 %
    expect(found.message).toContain('86 %');
  });

  test('is measured with the stitches that run past the block', () => {
    const runs = { xy: Float64Array.of(-2.5, 10, 40, 182), start: Int32Array.of(0, 2) };
    expect(sewnField({ width: 130, height: 180 }, [runs.xy])).toEqual({ width: 132.5, height: 182 });
    expect(hoopFindings(hoop, sewnField(hoop, [runs.xy]))).toHaveLength(1);
  });

  test('that takes the block but not its basting box is told how far outside a box would fit', () => {
    const block = { width: 110, height: 160 };
    const boxed = (basting: number) => ({ width: 110 + 2 * basting, height: 160 + 2 * basting });
    const said = (basting: number) =>
      roomFindings({ hoop, hooping: { basting } }, block, boxed(basting), block);
    expect(said(10)).toEqual([]);
    const [found] = said(12.5);
    expect(found).toMatchObject({ level: 'error', code: 'basting-too-wide' });
    expect(found.message).toContain('--basting 10 would fit');
    const [large, boxedLarge] = [
      { width: 140, height: 190 },
      { width: 158, height: 208 },
    ];
    const [big] = roomFindings({ hoop, hooping: { basting: 9 } }, large, boxedLarge, large);
    expect(big.code).toBe('hoop-too-small');
  });

  test('is looked for among the common ones when none is named', () => {
    const said = (width: number, height: number) => {
      const work = { width, height };
      return roomFindings({ hoop: null }, work, work, work);
    };
    expect(said(300, 200)).toEqual([]);
    const [found] = said(400, 250);
    expect(found.level).toBe('note');
    // turned: 400 into 300 is 75 %, 250 into 200 is 80 %
    expect(found.message).toContain('at 75 %');
  });
});
