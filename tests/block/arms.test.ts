import { describe, expect, it } from 'vitest';
import { armDirection, pairArms } from '../../src/block/arms.js';
import { fromPoints } from '../../src/geometry/polyline.js';

const pairs = (...degrees: number[]) =>
  pairArms(degrees.map((d) => (d * Math.PI) / 180)).map(({ arms }) => [...arms].sort((a, b) => a - b));

describe('arms of a junction', () => {
  it('pair when they run straight on, at most 30 degrees off', () => {
    expect(pairs(0, 90, 180)).toEqual([[0, 2]]);
    expect(pairs(0, 90, 209)).toEqual([[0, 2]]);
    expect(pairs(0, 75, 211)).toEqual([]);
    expect(pairs(0, 120, 240)).toEqual([]);
  });

  it('stay single when the next choice is less than 10 degrees worse', () => {
    expect(pairs(0, 175, 184)).toEqual([]);
    expect(pairs(0, 170, 181)).toEqual([]);
    expect(pairs(0, 165, 181)).toEqual([[0, 2]]);
  });

  it('pair twice at a crossing and three times at a star', () => {
    expect(pairs(0, 60, 180, 240).sort()).toEqual([
      [0, 2],
      [1, 3],
    ]);
    expect(pairs(0, 60, 120, 180, 240, 300).sort()).toEqual([
      [0, 3],
      [1, 4],
      [2, 5],
    ]);
  });

  it('that were ambiguous may pair when a straighter pair has taken their rival', () => {
    // arm at 2 degrees: 180 is 2 off, 190 is 8 off; 180 goes to 0, which leaves 190
    expect(pairs(0, 12, 180, 192).sort()).toEqual([
      [0, 2],
      [1, 3],
    ]);
  });

  it('point to what lies 2 mm along them, not along their first chord', () => {
    expect(
      armDirection(
        fromPoints([
          [0, 0],
          [0.5, 0],
          [0.5, 5],
        ]),
      ),
    ).toBeCloseTo(Math.atan2(1.5, 0.5), 12);
    expect(
      armDirection(
        fromPoints([
          [0, 0],
          [1, 1],
        ]),
      ),
    ).toBeCloseTo(Math.PI / 4, 12);
  });
});
