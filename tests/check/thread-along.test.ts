import fc from 'fast-check';
import { expect, it } from 'vitest';
import { leastAlong } from '../../src/check/thread-along.js';
import { tenths } from '../geometry/tenths.js';

const spots = fc.array(fc.tuple(tenths(-2, 22), tenths(-8, 8)), { minLength: 1, maxLength: 5 });
/** How far a spot lies from a straight seam of 20 mm. */
const away = ([x, y]: readonly [number, number]) => Math.hypot(Math.min(0, x), Math.max(0, x - 20), y);

it('thread first lies beside a straight seam where the first of all needle points lies that is near enough', () => {
  fc.assert(
    fc.property(spots, tenths(1, 6), tenths(0, 6), (all, beside, heading) => {
      fc.pre(all.every((spot) => Math.abs(away(spot) - beside) > 1e-6));
      const [c, s] = [Math.cos(heading), Math.sin(heading)];
      const xy = Float64Array.from(all.flatMap(([x, y]) => [x * c - y * s, x * s + y * c]));
      const seam = Float64Array.of(0, 0, 20 * c, 20 * s);
      const runs = { xy, start: Int32Array.of(0, all.length) };
      const told = leastAlong(seam, Float64Array.of(0, 20), [runs], beside);
      const near = all.filter((spot) => away(spot) < beside).map(([x]) => Math.min(20, Math.max(0, x)));
      if (near.length === 0) expect(told).toBeNull();
      else expect(told).toBeCloseTo(Math.min(...near), 6);
    }),
    { numRuns: 500 },
  );
});
