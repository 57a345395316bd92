import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eulerTrail } from '../../../src/needle/graph/hierholzer.js';

type Edge = readonly [number, number];

const trailOf = (edges: readonly Edge[], passes: readonly number[] = edges.map(() => 1)) =>
  eulerTrail(
    Math.max(...edges.flat()) + 1,
    edges.map((edge) => edge[0]),
    edges.map((edge) => edge[1]),
    passes,
  );

function isTrail(edges: readonly Edge[], passes: readonly number[], trail: Int32Array): boolean {
  const left = [...passes];
  let at = -1;
  for (const step of trail) {
    const [a, b] = step & 1 ? [...edges[step >> 1]].reverse() : edges[step >> 1];
    if (at >= 0 && a !== at) return false;
    if (--left[step >> 1] < 0) return false;
    at = b;
  }
  return left.every((count) => count === 0);
}

describe('an Euler trail', () => {
  it('exists on a connected graph exactly when 0 or 2 points are odd (Euler; route inspection problem, encyclopedia text)', () => {
    const graph = fc.record({
      tree: fc.array(fc.nat(50), { minLength: 1, maxLength: 9 }),
      more: fc.array(fc.tuple(fc.nat(9), fc.nat(9)), { maxLength: 9 }),
      passes: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 18, maxLength: 18 }),
    });
    fc.assert(
      fc.property(graph, ({ tree, more, passes }) => {
        const edges: Edge[] = tree.map((back, i) => [back % (i + 1), i + 1]);
        for (const [a, b] of more) edges.push([a % (tree.length + 1), b % (tree.length + 1)]);
        const counts = edges.map((_, i) => passes[i]);
        const degree = new Map<number, number>();
        edges.forEach(([a, b], i) => {
          for (const node of [a, b]) degree.set(node, (degree.get(node) ?? 0) + counts[i]);
        });
        const odd = [...degree.values()].filter((d) => d % 2 === 1).length;
        const trail = trailOf(edges, counts);
        expect(odd % 2).toBe(0);
        if (odd > 2) expect(trail).toBeNull();
        else expect(isTrail(edges, counts, trail!)).toBe(true);
      }),
    );
  });

  it('starts and ends on the two points of degree 3 when the degrees are 3, 4, 4, 3, 2 (worked example, The Chinese Postman Problem, 2014)', () => {
    const edges: Edge[] = [
      [4, 1],
      [4, 2],
      [1, 0],
      [1, 2],
      [1, 3],
      [2, 0],
      [2, 3],
      [0, 3],
    ];
    const trail = trailOf(edges)!;
    const ends = [trail[0], trail[trail.length - 1] ^ 1].map((step) => edges[step >> 1][step & 1]);
    expect(ends.sort()).toEqual([0, 3]);
  });

  it('does not exist on K4, whose four points all have degree 3 (same text; the rest by arithmetic)', () => {
    expect(
      trailOf([
        [0, 1],
        [0, 2],
        [0, 3],
        [1, 2],
        [1, 3],
        [2, 3],
      ]),
    ).toBeNull();
  });

  it('does not exist on two pieces that no edge joins', () => {
    expect(
      trailOf([
        [0, 1],
        [1, 0],
        [2, 3],
        [3, 2],
      ]),
    ).toBeNull();
  });
});
