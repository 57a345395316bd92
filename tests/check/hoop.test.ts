import { describe, expect, test } from 'vitest';
import { hoopFindings, sewnField } from '../../src/check/hoop.js';

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
});
