import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberList, table } from '../../src/report/table.js';

describe('tables in plain text', () => {
  it('puts figures to the right and words to the left', () => {
    expect(
      table(
        [{ heading: 'Stop', figures: true }, { heading: 'What' }],
        [
          ['1', 'feather'],
          ['12', 'fly'],
        ],
      ),
    ).toBe(['Stop  What', '----  -------', '   1  feather', '  12  fly'].join('\n'));
  });
});

describe('numbers of seams', () => {
  it('stand as ranges from three on, the outline last', () => {
    expect(numberList([5, 1, 'outline', 4, 6, 9, 8])).toBe('1, 4-6, 8, 9, outline');
    expect(numberList([])).toBe('');
  });

  it('can be read back', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 60 })), (ids) => {
        const back = numberList(ids)
          .split(', ')
          .filter(Boolean)
          .flatMap((part) => {
            const [first, last = first] = part.split('-').map(Number);
            return Array.from({ length: last - first + 1 }, (_, i) => first + i);
          });
        expect(back).toEqual([...ids].sort((a, b) => a - b));
      }),
    );
  });
});
