import { describe, expect, it } from 'vitest';
import { Slips, within } from '../../src/asked/slips.js';
import { InputError } from '../../src/input-error.js';

const refusal = (wrong: string) => () => {
  throw new InputError('x', '', wrong, 'change it');
};
function told(wrongs: readonly string[]): InputError {
  const slips = new Slips();
  wrongs.forEach((wrong, k) => {
    slips.caught(() => within(`treatment ${k + 1}`, ['treatments', k], refusal(wrong)));
  });
  try {
    slips.tell();
  } catch (error) {
    return error as InputError;
  }
  throw new Error('nothing was told');
}

describe('slips in a dressing', () => {
  it('are nothing when all went well', () => {
    const slips = new Slips();
    expect(slips.caught(() => [1, 2])).toEqual([1, 2]);
    expect(() => slips.tell()).not.toThrow();
  });

  it('are told once each, with the place of the first', () => {
    const one = told(['a', 'a', 'a']);
    expect(one.message).toBe('treatment 1: a (and 2 more like it); change it');
    expect(one.path).toEqual(['treatments', 0]);
  });

  it('are all told when they differ', () => {
    expect(told(['a', 'b', 'a']).message).toBe(
      'treatment 1: a (and 1 more like it) (change it), treatment 2: b (change it); correct these 3 places',
    );
  });

  it('let faults of the program through', () => {
    const fault = () => {
      throw new TypeError('a fault');
    };
    expect(() => new Slips().caught(() => within('here', [], fault))).toThrow(TypeError);
  });
});
