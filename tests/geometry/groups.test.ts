import fc from 'fast-check';
import { expect, test } from 'vitest';
import { groupsOf } from '../../src/geometry/groups.js';

test('numbers are in one group when a way of joined pairs leads from one to the other, whatever the order', () => {
  const pair = fc.tuple(fc.nat(19), fc.nat(19));
  fc.assert(
    fc.property(fc.array(pair, { maxLength: 30 }), (pairs) => {
      const groups = groupsOf(20);
      for (const [i, j] of pairs) groups.join(i, j);
      // by walking: the lowest number that can be reached
      const lowest = (from: number): number => {
        const reached = new Set([from]);
        for (let size = 0; size !== reached.size; ) {
          size = reached.size;
          for (const [i, j] of pairs) if (reached.has(i) || reached.has(j)) reached.add(i).add(j);
        }
        return Math.min(...reached);
      };
      const numbers = Array.from({ length: 20 }, (_, i) => i);
      expect(numbers.map(groups.of)).toEqual(numbers.map(lowest));
    }),
  );
});
