import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitLines } from '../../src/fit/fit-lines.js';
import { stitchNamed } from '../stitches/dictionary.js';
import { askFor, chainsOf } from './asks.js';
import { mapOfLines } from './block-of-lines.js';

const CENTER = [100, 100] as const;

/** Three seams of 50 mm that meet in a point, none running through. */
const star = (turn: number) =>
  mapOfLines(
    [0, 1, 2].map((k) => {
      const a = turn + (k * 2 * Math.PI) / 3;
      return [CENTER, [100 + 50 * Math.cos(a), 100 + 50 * Math.sin(a)]];
    }),
  );

// Christie, Embroidery and Tapestry Weaving, 1912, figure 65 (figure seen): an arm opens outwards from the bottom of its
// loop to its tip, which is furthest from the line.
test('arms of feather open outwards to their tips in the point of a Y, too', () => {
  const arm = stitchNamed('feather')
    .build({})
    .legs.find(({ name }) => name === 'arm')!.class;
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 2, noNaN: true }),
      fc.double({ min: 5, max: 9, noNaN: true }),
      (turn, width) => {
        const map = star(turn);
        const asks = map.seams.map(({ id }) => askFor(id, 'feather', { sizes: { width } }));
        const fits = fitLines(map, asks, { gap: 0.6, outline: 'free' });
        let back = 0;
        let near = 0;
        fits.forEach(({ fit }, s) => {
          const { points } = map.seams[s];
          const n = points.length;
          const [ax, ay] = [points[0], points[1]];
          const length = Math.hypot(points[n - 2] - ax, points[n - 1] - ay);
          const [tx, ty] = [(points[n - 2] - ax) / length, (points[n - 1] - ay) / length];
          for (const chain of chainsOf(fit)) {
            for (let leg = 0; leg < chain.from.length; leg++) {
              if (chain.legClass[leg] !== arm) continue;
              let furthest = 0;
              for (let p = chain.pathStart[leg]; p < chain.pathStart[leg + 1]; p++) {
                const [dx, dy] = [chain.path[2 * p] - ax, chain.path[2 * p + 1] - ay];
                const off = Math.abs(dx * ty - dy * tx);
                back = Math.max(back, furthest - off);
                furthest = Math.max(furthest, off);
                const [cx, cy] = [chain.path[2 * p] - CENTER[0], chain.path[2 * p + 1] - CENTER[1]];
                if (Math.hypot(cx, cy) < width / 2) near++;
              }
            }
          }
        });
        expect(near).toBeGreaterThan(0);
        expect(back).toBeLessThan(0.15);
      },
    ),
    { numRuns: 25 },
  );
});
