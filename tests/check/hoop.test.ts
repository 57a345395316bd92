import { describe, expect, test } from 'vitest';
import { hoopFindings } from '../../src/check/hoop.js';

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
});
