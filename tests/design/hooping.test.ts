import { describe, expect, test } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import type { Design, Stop } from '../../src/design/design.js';
import { hoopingStops } from '../../src/design/hooping.js';
import { writeDesign } from '../../src/design/write-design.js';
import type { Hooping } from '../../src/formats/dressing.js';
import { cutBlock } from '../bench/many-seams.js';
import { program, sewOn } from './machine.js';

const { map } = buildSeamMap(cutBlock(120, 60, 3));
const sewn = (hooping: Hooping): Stop[] => hoopingStops(map, hooping);

function lengths({ runs: { xy, start } }: Stop): number[] {
  const found: number[] = [];
  for (let run = 0; run + 1 < start.length; run++) {
    for (let i = start[run] + 1; i < start[run + 1]; i++) {
      found.push(Math.hypot(xy[2 * i] - xy[2 * i - 2], xy[2 * i + 1] - xy[2 * i - 1]));
    }
  }
  return found;
}
/** Stitches that are no part of a tie. */
const plain = (stop: Stop) => lengths(stop).filter((length) => length > 1.2);
const box = ({ runs: { xy } }: Stop) => {
  const at = (k: 0 | 1) => [...xy].filter((_, i) => i % 2 === k);
  return [Math.min(...at(0)), Math.min(...at(1)), Math.max(...at(0)), Math.max(...at(1))];
};

describe('what is sewn when a finished block is hooped', () => {
  test('is nothing unless it is asked for', () => {
    expect(sewn({})).toEqual([]);
  });

  test('the outline is sewn on the stabilizer first, along the outline and through its corners', () => {
    const [outline] = sewn({ outline: true, basting: 9, align: [[60, 60]] });
    expect(outline.kind).toBe('placement');
    expect(box(outline).map((value) => Math.round(value * 1000) / 1000)).toEqual([0, 0, 120, 120]);
    expect(Math.max(...plain(outline))).toBeLessThanOrEqual(3.001);
    const holes = new Set(
      Array.from(
        { length: outline.runs.xy.length / 2 },
        (_, i) => `${outline.runs.xy.slice(2 * i, 2 * i + 2)}`,
      ),
    );
    for (const corner of ['0,0', '120,0', '120,120', '0,120']) expect(holes.has(corner)).toBe(true);
  });

  test('a basting box lies 8 to 10 mm outside, in stitches of 5 to 6 mm to be pulled out (common practice)', () => {
    const [basting] = sewn({ basting: 9 });
    expect(basting.kind).toBe('basting');
    expect(box(basting)).toEqual([-9, -9, 129, 129]);
    const long = plain(basting).filter((length) => length > 4.5);
    expect(Math.max(...long)).toBeLessThanOrEqual(6);
    expect(Math.min(...long)).toBeGreaterThan(4.5);
  });

  test('places to align by get one hole each, or a cross of two long stitches', () => {
    const places = [
      [10, 10],
      [110, 12],
      [60, 100],
    ] as const;
    const [holes] = sewn({ align: places });
    expect(holes.runs.start.length - 1).toBe(3);
    expect(lengths(holes)).toEqual([1, 1, 1]);
    places.forEach((place, i) => {
      expect([...holes.runs.xy.slice(4 * i + 2, 4 * i + 4)]).toEqual([...place]);
    });
    const [crosses] = sewn({ align: places, crosses: true });
    expect(plain(crosses).filter((length) => length > 3)).toHaveLength(6);
  });

  test('holds its thread by ties, stop by stop; single holes are for a needle without thread', () => {
    const places = [
      [10, 10],
      [110, 12],
    ] as const;
    const stops = sewn({ outline: true, basting: 9, align: places, crosses: true });
    const design: Design = { before: null, after: null, stops, origin: [-60, -60], name: 'x' };
    const order = stops.map((_, i) => i);
    expect(sewOn(program(writeDesign(design)), order).faults).toEqual([]);
    expect(sewOn(program(writeDesign(design)), order.reverse()).faults).toEqual([]);
    const [holes] = sewn({ align: places });
    const untied = sewOn(program(writeDesign({ ...design, stops: [holes] })), [0]);
    expect(untied.holes).toHaveLength(2);
    expect(untied.faults.length).toBeGreaterThan(0);
  });
});
