import Flatbush from 'flatbush';
import type { HotPlace } from './hot-places.js';
import type { SewnStitches } from './sewn-stitches.js';

/** Stops that put fewer than this share of the needle points at a place are not its cause. */
const LEAST_SHARE = 0.2;
/** Needle points this near to a place have made it what it is, mm. */
const NEAR = 1;

/** For each place the stops that made it so dense, from 0, those with the most needle points there first. */
export function causesOf({ ends, stops }: SewnStitches, places: readonly HotPlace[]): number[][] {
  if (places.length === 0) return [];
  const index = new Flatbush(places.length);
  for (const { at } of places) index.add(at[0], at[1], at[0], at[1]);
  index.finish();
  const shares = places.map(() => new Map<number, number>());
  stops.forEach(({ from, to }, stop) => {
    for (let i = from; i < to; i++) {
      const [x, y] = [ends[4 * i + 2], ends[4 * i + 3]];
      index.search(x - NEAR, y - NEAR, x + NEAR, y + NEAR, (place) => {
        const share = shares[place];
        share.set(stop, (share.get(stop) ?? 0) + 1);
        return false;
      });
    }
  });
  return shares.map((share) => {
    const all = [...share.values()].reduce((sum, count) => sum + count, 0);
    return [...share]
      .filter(([, count]) => count >= LEAST_SHARE * all)
      .sort(([a, m], [b, n]) => n - m || a - b)
      .map(([stop]) => stop);
  });
}
