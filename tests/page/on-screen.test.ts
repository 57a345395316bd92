import { describe, expect, test } from 'vitest';
import { onScreen } from '../../page/state/on-screen.js';

describe('a finding on the page', () => {
  test.each([
    [
      'Cream is not clear; a darker thread (--set 8:thread=...) would show',
      'Cream is not clear; a darker thread would show',
    ],
    ['seam 2 ends 0.40 mm short of seam 3; --snap 0.5 joins them', 'seam 2 ends 0.40 mm short of seam 3'],
    [
      'new stops go in after 24; --role 3=seam says of a stop what it is, --stops names the seams',
      'new stops go in after 24',
    ],
    [
      '7 times through one hole; fewer passes would ease it',
      '7 times through one hole; fewer passes would ease it',
    ],
  ])('names no option of the command line: %s', (said, shown) => {
    expect(onScreen(said)).toBe(shown);
  });
});
