import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../src/check/density/limits.js';
import { checkLimits, densityByOptions, limitsOption } from '../../src/cli/limits-option.js';

const parse = limitsOption('--limits');
const said = (...words: string[]) =>
  densityByOptions(undefined, { limits: words.reduce((before, word) => parse(word, before), {}) });

describe('limits that the maker sets herself', () => {
  it('are from where a measure is worth a look, and from where it is too much', () => {
    expect(said('holes=4,8', 'layers=3.5,5', 'in-one-hole=5,9', 'cover=40')).toEqual({
      holes: [4, 8],
      layers: [3.5, 5],
      inOneHole: [5, 9],
      cover: 0.4,
    });
  });

  it('leave what is too much as it was, unless the one number is higher', () => {
    expect(said('holes=4')).toEqual({ holes: [4, LIMITS.firm.holes.error] });
    expect(said('holes=12')).toEqual({ holes: [12, 12] });
  });

  it('go before those that a dressing has, measure by measure, and leave it its others', () => {
    const dressing = { cloth: 'fine', holes: [3, 12], cover: 0.3 } as const;
    expect(densityByOptions(dressing, {})).toBe(dressing);
    expect(densityByOptions(dressing, { limits: parse('holes=4') })).toEqual({ ...dressing, holes: [4, 12] });
    expect(densityByOptions(dressing, { cloth: 'firm', limits: parse('layers=2') })).toEqual({
      ...dressing,
      cloth: 'firm',
      layers: [2, LIMITS.firm.layers.error],
    });
  });

  it('are for a picture of density, or a dressing that keeps them', () => {
    const limits = parse('holes=4');
    expect(() => checkLimits({ limits }, ['.svg'])).toThrow(/--limits: says from where on density is told/);
    expect(() => checkLimits({ cloth: 'fine', show: new Set(['stops']) }, ['.svg'])).toThrow(/--cloth/);
    expect(() => checkLimits({ limits, show: new Set(['layers']) }, ['.svg'])).not.toThrow();
    expect(() => checkLimits({ limits }, ['.svg', '.dressing.json'])).not.toThrow();
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
