import fc from 'fast-check';
import { expect, test } from 'vitest';
import { copied, float32s, float64s, int32s, uint8s, uint16s } from '../../src/geometry/flat.js';

const makers = [float64s, float32s, int32s, uint16s, uint8s] as const;

test('arrays cut from shared buffers begin as nothing but zeros, and what is written into one stays in it', () => {
  const asks = fc.array(fc.tuple(fc.nat(makers.length - 1), fc.nat(5000)), { minLength: 1, maxLength: 60 });
  fc.assert(
    fc.property(asks, (wanted) => {
      const made = wanted.map(([kind, length], i) => {
        const array = makers[kind](length);
        expect(array).toHaveLength(length);
        expect(array.every((value) => value === 0)).toBe(true);
        return array.fill(1 + (i % 200));
      });
      made.forEach((array, i) => {
        expect(array.every((value) => value === 1 + (i % 200))).toBe(true);
      });
    }),
    { numRuns: 50 },
  );
});

test('a copy holds the same numbers, whatever becomes of the first', () => {
  fc.assert(
    fc.property(fc.array(fc.double()), (numbers) => {
      const first = Float64Array.from(numbers);
      const copy = copied(first);
      first.fill(7);
      expect([...copy]).toEqual(numbers);
    }),
  );
});
