import { describe, expect, it } from 'vitest';
import { InputError } from '../src/input-error.js';

describe('the one line of a refusal', () => {
  it('is where, what is wrong, what would be right', () => {
    expect(new InputError('x', '--width', "'12mm' is no number", 'give 12').message).toBe(
      "--width: '12mm' is no number; give 12",
    );
  });

  it.each(['"', "'"])('shows a long name in %s by its beginning and end', (mark) => {
    const name = `begin ${'of it '.repeat(500)}end`;
    const { message } = new InputError(
      'x',
      `stitch ${mark}${name}${mark}`,
      `there is no ${mark}${name}${mark}`,
      'y',
    );
    expect(message.length).toBeLessThan(200);
    expect(message).toMatch(/begin of it.*\.\.\..*it end["']: there is no .begin.*end["']; y$/);
  });

  it('takes no apostrophe for a quote', () => {
    const wrong = `the maker's own library, ${'which lies in a folder, '.repeat(5)}is not the block's`;
    expect(new InputError('x', 'here', wrong, 'y').message).toBe(`here: ${wrong}; y`);
  });
});
