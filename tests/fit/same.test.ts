import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isSame } from '../../src/fit/same.js';

const leaf = fc.oneof(fc.integer({ min: 0, max: 2 }), fc.constantFrom('a', 'b', null, undefined, true));
const value = fc.letrec((tie) => ({
  any: fc.oneof(
    { depthSize: 'small' },
    leaf,
    fc.array(tie('any'), { maxLength: 3 }),
    fc.dictionary(fc.constantFrom('x', 'y'), tie('any'), { noNullPrototype: true }),
    fc.float64Array({ maxLength: 2, min: 0, max: 1, noNaN: true }),
  ),
})).any;

describe('two values', () => {
  test('are the same when Node holds them deeply equal', () => {
    fc.assert(
      fc.property(value, value, (a, b) => isSame(a, b) === isDeepStrictEqual(a, b)),
      { numRuns: 2000 },
    );
    fc.assert(fc.property(value, (a) => isSame(a, structuredClone(a))));
  });

  test('that hold functions or sets are the same only with the very same ones', () => {
    const f = () => 1;
    expect(isSame({ f }, { f })).toBe(true);
    expect(isSame({ f }, { f: () => 1 })).toBe(false);
    expect(isSame(new Set([1]), new Set([1]))).toBe(false);
  });
});
