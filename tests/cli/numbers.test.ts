import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countOption, lengthOption, listOption } from '../../src/cli/numbers.js';
import { InputError } from '../../src/input-error.js';

const refused = (parse: () => unknown) => expect(parse).toThrow(InputError);

describe('a length on the command line', () => {
  const length = lengthOption('--width', 1, 40);

  it.each([
    '12mm',
    'abc',
    '',
    ' ',
    'NaN',
    'Infinity',
    '-Infinity',
    '1e1',
    '0x10',
    '1,5',
    '1 2',
    '--',
    '.',
    '12.',
    '0.99',
    '40.01',
    '-5',
  ])("refuses '%s'", (word) => refused(() => length(word)));

  it('takes plain numbers within its range, and no others', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1000, max: 9000 }), (hundredths) => {
        const word = (hundredths / 100).toFixed(2);
        if (hundredths >= 100 && hundredths <= 4000) expect(length(word)).toBe(hundredths / 100);
        else refused(() => length(word));
      }),
    );
  });

  it("names the option and repeats the user's own word", () => {
    expect(() => length('12mm')).toThrow(/^--width: '12mm' is not a plain number; /);
  });
});

describe('a whole number on the command line', () => {
  const count = countOption('--after', 0, 999);
  it.each(['1.5', '-1', '1000', 'two', '', '99999999999999999999'])("refuses '%s'", (word) =>
    refused(() => count(word)),
  );
  it('takes its limits', () => expect([count('0'), count('999')]).toEqual([0, 999]));
});

describe('a list on the command line', () => {
  const list = listOption('--seam');
  it('takes numbers and ranges, each number once, ascending', () => {
    expect(list('4-6,1, 5')).toEqual([1, 4, 5, 6]);
  });
  it.each(['', ',', '1,', '0', '0-3', '6-4', '1-', '-3', '1;2', 'all', '1-999999999', '1.5'])(
    "refuses '%s'",
    (word) => refused(() => list(word)),
  );
});
