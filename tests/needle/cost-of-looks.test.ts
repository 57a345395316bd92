import { describe, expect, it } from 'vitest';
import { routesOf } from '../../src/needle/sew-chain.js';
import { blanket, feather, herringbone, ladder, ring, sprigs } from './chains.js';
import { costOfLooks } from './cost-of-looks.js';

describe('the cost of looks', () => {
  it('is nothing where the hand sews every leg as often as asked, in its own order', () => {
    expect(costOfLooks(herringbone(6, 1))).toBe(0);
  });

  it('is never more than what the routes add', () => {
    for (const chain of [
      feather(7),
      blanket(7),
      ladder(7),
      ring(9),
      sprigs(3),
      feather(8, 1),
      blanket(5, 2),
    ]) {
      const price = routesOf(chain).reduce((sum, { cost }) => sum + cost, 0);
      const looks = costOfLooks(chain);
      expect(looks).toBeGreaterThanOrEqual(0);
      expect(looks).toBeLessThanOrEqual(price);
    }
  });

  it('is paid on rails with rungs, whose cheapest trail treats like rungs unlike', () => {
    expect(costOfLooks(ladder(6, [1, 1, 1]))).toBeGreaterThan(0);
  });
});
