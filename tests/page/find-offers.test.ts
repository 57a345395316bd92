import { describe, expect, it } from 'vitest';
import { offersOf } from '../../page/core/offers.js';
import { familiesOf, found } from '../../page/state/find-offers.js';
import { builtIn } from '../stitches/dictionary.js';

const offers = offersOf(builtIn);
const names = (typed: string) => found(offers, typed).map(({ name }) => name);

describe('the shelf', () => {
  it('finds a stitch by any name that it goes by, however it is written', () => {
    // Th. de Dillmont and Mary Thomas call herringbone these as well
    for (const typed of ['catch stitch', 'Catch-Stitch', 'mossoul', 'plaited'])
      expect(names(typed)).toContain('herringbone');
    expect(names('briar')).toContain('feather');
  });

  it('has names that begin so before others', () => {
    expect(names('feather')[0]).toMatch(/^feather/);
  });

  it('finds nothing where nothing goes by the name', () => {
    expect(names('zzz')).toEqual([]);
  });

  it('has every stitch and treatment of the library once, family by family', () => {
    const shown = familiesOf(offers).flatMap(({ offers: of }) => of);
    expect(shown.length).toBe(builtIn.stitches.size + builtIn.treatments.size);
    expect(new Set(shown).size).toBe(shown.length);
  });
});
