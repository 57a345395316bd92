import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pointsOfSeam } from '../../../page/core/drawn-lines.js';
import { lineBegun, nodesThrough } from '../../../page/state/drawing/lines.js';
import { toPoints } from '../../../src/geometry/polyline.js';

const place = fc.tuple(fc.integer({ min: 0, max: 130 }), fc.integer({ min: 0, max: 180 }));
const places = fc.uniqueArray(place, { minLength: 2, maxLength: 6, selector: String });

it('a line that is begun is seen as it will lie: straight from place to place, or the very curve through them', () => {
  fc.assert(
    fc.property(places, (all) => {
      expect(lineBegun(all, false)).toEqual(all);
      const seen = lineBegun(all, true);
      const will = pointsOfSeam({ id: 1, nodes: nodesThrough(all, true), closed: false });
      expect(seen).toEqual(all.length < 3 ? all : toPoints(will));
      for (const [x, y] of all) {
        expect(Math.min(...seen.map(([u, v]) => Math.hypot(u - x, v - y)))).toBeLessThan(0.01);
      }
    }),
  );
});
