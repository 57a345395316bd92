import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Density, density } from '../../../src/check/density/density.js';
import type { Field } from '../../../src/check/density/field.js';
import type { SewnStitches } from '../../../src/check/density/sewn-stitches.js';
import { countsFor, countTiles } from '../../../src/check/density/tile-counts.js';
import type { TileCrew } from '../../../src/check/density/tile-crew.js';

const place = fc.tuple(fc.integer({ min: 0, max: 450 }), fc.integer({ min: 0, max: 450 }));
/** Stops of long stitches over many tiles. */
const work = fc
  .array(fc.array(place, { minLength: 2, maxLength: 12 }), { minLength: 1, maxLength: 4 })
  .map((lines): SewnStitches => {
    const ends: number[] = [];
    const stops = lines.map((line) => {
      const from = ends.length / 4;
      for (let i = 1; i < line.length; i++) ends.push(...line[i - 1], ...line[i]);
      return { from, to: ends.length / 4, width: 0.4 };
    });
    return { ends: Float64Array.from(ends, (steps) => steps / 10), stops };
  });

/** A crew of so many, of whom each takes the tiles that are dealt to it. */
const dealt = (crew: number, to: readonly number[]): TileCrew => {
  const room = (bytes: number) => new SharedArrayBuffer(bytes);
  return {
    room,
    count(sewn, tiles) {
      const counts = countsFor(tiles.length, room);
      const totals = Array.from({ length: crew }, (_, own) => {
        let t = -1;
        return countTiles(sewn, tiles, counts, () => {
          do t++;
          while (t < tiles.length && to[t % to.length] !== own);
          return t;
        });
      });
      return { counts, totals };
    },
  };
};

/** All that is measured, cells as text: that is compared at once. */
const told = ({ stops, whole, ...fields }: Density) => ({
  stops,
  whole,
  cells: Object.values(fields).map(({ counts }: Field) => Buffer.from(counts.buffer).toString('latin1')),
});

test('density is the same whoever counts which tile of the cloth', () => {
  const deals = fc.array(fc.nat({ max: 2 }), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(work, deals, (sewn, to) => {
      expect(told(density(sewn, () => dealt(3, to)))).toEqual(told(density(sewn)));
    }),
    { numRuns: 60 },
  );
});
