import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Samples } from '../../src/needle/samples.js';
import { ChainMaker } from './chains.js';

type Spot = readonly [number, number];

const asked = { wanted: 1.1, shortest: 0.8, longest: 7, aside: 0 };

/** A curve from the origin, bending from vertex to vertex. */
const curve = fc
  .array(
    fc.tuple(fc.double({ min: 0.2, max: 1.2, noNaN: true }), fc.double({ min: -0.5, max: 0.5, noNaN: true })),
    {
      minLength: 3,
      maxLength: 14,
    },
  )
  .map((steps): Spot[] => {
    const path: Spot[] = [[0, 0]];
    let heading = 0;
    for (const [length, turn] of steps) {
      heading += turn;
      const [x, y] = path[path.length - 1];
      path.push([x + length * Math.cos(heading), y + length * Math.sin(heading)]);
    }
    return path;
  });

const moved = (path: readonly Spot[], turn: number, dx: number, dy: number): Spot[] =>
  path.map(([x, y]) => [
    dx + x * Math.cos(turn) - y * Math.sin(turn),
    dy + x * Math.sin(turn) + y * Math.cos(turn),
  ]);

function pointsOf(paths: readonly (readonly Spot[])[]): number[][] {
  const chain = paths
    .reduce((maker, path, i) => maker.leg(i, 0, 'curve', 1, [...path]), new ChainMaker())
    .chain();
  const samples = new Samples();
  samples.begin(chain);
  return paths.map((_, leg) => {
    samples.curve(chain, leg, 0, 0, asked);
    const xy: number[] = [];
    for (let i = samples.first; i <= samples.last; i++) xy.push(samples.x[i], samples.y[i]);
    return xy;
  });
}

describe('curved legs of one class', () => {
  it('are pierced where each would be if it stood alone, whether or not the one before has its shape', () => {
    const placed = fc.tuple(
      curve,
      curve,
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: -40, max: 40, noNaN: true }),
    );
    fc.assert(
      fc.property(placed, ([one, other, turn, away]) => {
        const paths = [one, moved(one, turn, away, 7), other, moved(other, -turn, 9, away), one];
        const together = pointsOf(paths);
        paths.forEach((path, i) => {
          const [alone] = pointsOf([path]);
          expect(together[i].length).toBe(alone.length);
          const off = alone.map((value, k) => Math.abs(value - together[i][k]));
          expect(Math.max(...off)).toBeLessThan(1e-4);
        });
      }),
    );
  });
});
