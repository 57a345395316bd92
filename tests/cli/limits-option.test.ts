import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../src/check/density/limits.js';
import { limitsOption } from '../../src/cli/limits-option.js';

const parse = limitsOption('--limits', LIMITS.firm);
const said = (...words: string[]) => words.reduce((before, word) => parse(word, before), {});

describe('limits that the maker sets herself', () => {
  it('are from where a measure is worth a look, and from where it is too much', () => {
    expect(said('holes=4,8', 'layers=3.5,5', 'in-one-hole=5,9', 'cover=40')).toEqual({
      holes: { warning: 4, error: 8 },
      layers: { warning: 3.5, error: 5 },
      inOneHole: { warning: 5, error: 9 },
      cover: 0.4,
    });
  });

  it('leave what is too much as it was, unless the one number is higher', () => {
    expect(said('holes=4')).toEqual({ holes: { warning: 4, error: LIMITS.firm.holes.error } });
    expect(said('holes=12')).toEqual({ holes: { warning: 12, error: 12 } });
  });

  it.each([
    ['thread=4', /'thread=4' names no limit; give holes=4,8/],
    ['holes', /names no limit/],
    ['__proto__=4', /names no limit/],
    ['holes=8,4', /the lower one first/],
    ['holes=1,2,3', /the lower one first/],
    ['cover=40,60', /cover has one limit/],
    ['cover=400', /400 is out of range; give a number from 1 to 100/],
    ['layers=thick', /'thick' is not a plain number/],
    ['layers=', /names no limit/],
  ])('as %s are refused', (word, why) => {
    expect(() => said(word)).toThrow(why);
  });
});
