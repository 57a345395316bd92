import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ROLES, type Role } from '../../src/block/roles/role.js';
import { layings } from '../../src/sheet/laying.js';

const FIRST = /^Lay the first piece/;
const NEXT = /^Lay the next piece face down/;
const ON_TOP = /^Lay the fabric over the line just sewn/;

/** What is laid before the first stop, between the others and after the last. */
const laidBetween = (...roles: Role[]): string[][] => {
  const all = layings(roles);
  return Array.from({ length: roles.length + 1 }, (_, i) => {
    const after = all[i - 1]?.after;
    return [...(after === undefined ? [] : [after]), ...(all[i]?.before ?? [])];
  });
};
const like = (...what: RegExp[]) => what.map((one) => expect.stringMatching(one));

describe('what is laid along the stops of a pieced block', () => {
  test('the first piece after the map, one more before every seam', () => {
    expect(laidBetween('map', 'tack-down', 'seam', 'tack-down', 'seam')).toEqual(
      [[], [FIRST], [NEXT], [], [NEXT], []].map((what) => like(...what)),
    );
  });

  test('two pieces before a seam that nothing is tacked down for, and without a map too', () => {
    expect(laidBetween('map', 'seam')).toEqual([[], like(FIRST, NEXT), []]);
    expect(laidBetween('seam', 'seam')).toEqual([like(FIRST, NEXT), like(NEXT), []]);
    expect(laidBetween('tack-down', 'seam')).toEqual([like(FIRST), like(NEXT), []]);
  });

  test('what lies on top after its placement line, the piece of a seam that has such a line once', () => {
    expect(laidBetween('map', 'tack-down', 'placement', 'tack-down', 'edge')[3]).toEqual(like(ON_TOP));
    expect(laidBetween('map', 'placement', 'seam')[2]).toEqual(like(NEXT));
    expect(laidBetween('map', 'placement', 'allowance', 'seam').slice(2)).toEqual([[], like(NEXT), []]);
    expect(laidBetween('placement', 'seam')).toEqual([[], like(ON_TOP, NEXT), []]);
  });

  test('there is cloth under whatever holds or joins it, and a piece more for every seam', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...ROLES), { maxLength: 12 }), (roles) => {
        let pieces = 0;
        const between = laidBetween(...roles);
        roles.forEach((role, i) => {
          const was = pieces;
          pieces += between[i].length;
          if (role === 'tack-down') expect(pieces).toBeGreaterThanOrEqual(1);
          if (role !== 'seam') return;
          expect(pieces).toBeGreaterThanOrEqual(2);
          expect(pieces).toBeGreaterThan(was);
        });
      }),
    );
  });
});
