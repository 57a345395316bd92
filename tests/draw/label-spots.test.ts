import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearSpot, roomiest } from '../../src/draw/label-spots.js';
import { fromPoints } from '../../src/geometry/polyline.js';
import { twoPatches } from './two-patches.js';

describe('spots for numbers', () => {
  it('a seam is numbered in its middle, and beside a junction that is there', () => {
    const [seam] = twoPatches.seams;
    expect(clearSpot(seam.points, [], 2, [0.5, 0.4]).at).toEqual([30, 25]);
    expect(clearSpot(seam.points, [[30, 25]], 2, [0.5, 0.4]).at).toEqual([24, 25]);
  });

  it('a patch is numbered inside itself, however it is bent', () => {
    const bent = fc.array(fc.double({ min: 3, max: 30, noNaN: true }), { minLength: 5, maxLength: 24 });
    fc.assert(
      fc.property(bent, (radii) => {
        // A star about the origin: a point is inside when it is nearer to the origin than the edge in its direction.
        const corner = (i: number) => {
          const angle = (2 * Math.PI * i) / radii.length;
          return [
            radii[i % radii.length] * Math.cos(angle),
            radii[i % radii.length] * Math.sin(angle),
          ] as const;
        };
        const [x, y] = roomiest(fromPoints(Array.from({ length: radii.length + 1 }, (_, i) => corner(i))));
        const turn = (2 * Math.PI) / radii.length;
        const sector = Math.floor(((Math.atan2(y, x) + 2 * Math.PI) % (2 * Math.PI)) / turn);
        const [a, b] = [corner(sector), corner(sector + 1)];
        const side = (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
        expect(side).toBeGreaterThan(0);
      }),
    );
  });
});
