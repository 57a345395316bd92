import { describe, expect, it } from 'vitest';
import { wishesOnMap } from '../../src/block/wishes-by-number.js';
import type { Point } from '../../src/geometry/point.js';
import { InputError } from '../../src/input-error.js';
import { box, build, circle, ends, mapOf } from './draw.js';

/** Two seams that cross in the middle of a block: 1 runs down, 2 runs across. */
const crossing: Point[][] = [
  box(0, 0, 60, 40),
  [
    [20, 0],
    [20, 40],
  ],
  [
    [0, 20],
    [60, 20],
  ],
];
const spoke = (degrees: number): Point[] => {
  const a = (degrees * Math.PI) / 180;
  return [
    [50, 50],
    [50 + 30 * Math.cos(a), 50 + 30 * Math.sin(a)],
  ];
};
/** Three seams that end in one point: 1 from the upper right, 2 from the upper left, 3 from below. */
const star = [circle(50, 50, 30), spoke(90), spoke(210), spoke(330)];
const middle = <T extends { readonly onOutline: boolean }>(junctions: readonly T[]): T =>
  junctions.find(({ onOutline }) => !onOutline)!;

describe('at a junction the maker decides', () => {
  it('that a seam ends where it would run on: it becomes two, and the other runs through', () => {
    expect(mapOf(crossing).seams.map(ends)).toEqual(['20,0 to 20,40', '0,20 to 60,20']);
    const { map, findings } = build(crossing, { split: [{ at: [20, 20], seam: 2 }] });
    expect(map.seams.map(ends)).toEqual(['20,0 to 20,40', '0,20 to 20,20', '20,20 to 60,20']);
    expect(middle(map.junctions).through).toBe(1);
    expect(findings).toEqual([]);
    expect(map.seams.map((seam) => seam.ends?.map(({ kind }) => kind))).toEqual([
      ['outline', 'outline'],
      ['outline', 'junction'],
      ['junction', 'outline'],
    ]);
  });

  it('that two seams are one line, however sharply it turns there: the third then butts into it', () => {
    const before = mapOf(star);
    expect(before.seams.map(ends)).toEqual(['24.02,35 to 50,50', '75.98,35 to 50,50', '50,50 to 50,80']);
    const { map, findings } = build(star, { join: [{ at: [51, 50], seams: [3, 1] }] });
    expect(map.seams.map(ends)).toEqual(['24.02,35 to 50,80', '75.98,35 to 50,50']);
    expect(findings).toEqual([]);
    expect(middle(map.junctions).through).toBe(1);
    expect(map.seams[0].corners).toHaveLength(1);
  });

  it('that a seam is one line with the half of another that lies straighter on; the other half then ends there', () => {
    const tee: Point[][] = [
      box(0, 0, 60, 40),
      [
        [0, 20],
        [60, 20],
      ],
      [
        [30, 20],
        [50, 40],
      ],
    ];
    const { map } = build(tee, { join: [{ at: [30, 20], seams: [1, 2] }] });
    expect(map.seams.map(ends)).toEqual(['0,20 to 50,40', '30,20 to 60,20']);
    expect(middle(map.junctions).through).toBe(1);
  });

  it('who runs through after that, by the numbers that the block gives by itself', () => {
    const six = [circle(50, 50, 30), ...[0, 60, 120, 180, 240, 300].map(spoke)];
    // opposite spokes are one line each: three seams cross in one point
    expect(mapOf(six).seams).toHaveLength(3);
    const split = build(six, { split: [{ at: [50, 50], seam: 1 }], through: [{ at: [50, 50], seam: 3 }] });
    expect(split.findings).toEqual([]);
    const { through } = middle(split.map.junctions);
    expect(ends(split.map.seams[through! - 1])).toBe(ends(mapOf(six).seams[2]));
    const lost = build(six, { split: [{ at: [50, 50], seam: 1 }], through: [{ at: [50, 50], seam: 1 }] });
    expect(lost.findings.map(({ code }) => code)).toEqual(['through-lost']);
  });

  it('nothing that the junction cannot grant: that is told', () => {
    const { map, findings } = build(star, {
      split: [{ at: [50, 50], seam: 1 }],
      join: [
        { at: [50, 50], seams: [1, 9] },
        { at: [50, 80], seams: [3, 3] },
      ],
    });
    expect(map).toEqual(mapOf(star));
    expect(findings.map(({ code }) => code)).toEqual(['split-lost', 'join-lost', 'join-lost']);
    expect(findings[1].message).toBe(
      'seams 1 and 9 do not both reach a junction near 50, 50, so they cannot be joined there',
    );
  });
});

describe('junctions named by the two seams that meet there', () => {
  const refusal = (wishes: Parameters<typeof wishesOnMap>[1], lines = crossing): string => {
    try {
      wishesOnMap(mapOf(lines), wishes);
    } catch (error) {
      if (error instanceof InputError) return error.message;
      throw error;
    }
    return 'granted';
  };

  it('are found on the map', () => {
    expect(wishesOnMap(mapOf(crossing), { through: [{ seam: 1, meets: 2 }], split: [] })).toEqual({
      through: [{ at: [20, 20], seam: 1 }],
      split: [],
      join: [],
    });
    expect(wishesOnMap(mapOf(star), { join: [{ seam: 1, meets: 3 }] }).join).toEqual([
      { at: [50, 50], seams: [1, 3] },
    ]);
  });

  it('are refused where the seams do not meet, or end, with what would be right', () => {
    expect(refusal({ through: [{ seam: 1, meets: 7 }] })).toMatch(
      /--through 1@7: the block has no such seam/,
    );
    expect(refusal({ through: [{ seam: 1, meets: 1 }] })).toMatch(/a seam does not meet itself; it meets 2/);
    expect(refusal({ through: [{ seam: 1, meets: 3 }] }, star)).toBe(
      '--through 1@3: seam 1 ends where it meets seam 3; name a seam that runs on there, or make it one line with another: --join 1@3',
    );
    const apart: Point[][] = [
      ...crossing,
      [
        [40, 20],
        [40, 40],
      ],
    ];
    expect(refusal({ join: [{ seam: 1, meets: 3 }] }, apart)).toMatch(
      /--join 1@3: seam 1 does not meet seam 3; it meets 2/,
    );
    const onEdge: Point[][] = [
      box(0, 0, 60, 40),
      [
        [0, 20],
        [30, 0],
      ],
      [
        [30, 0],
        [60, 20],
      ],
    ];
    expect(refusal({ join: [{ seam: 1, meets: 2 }] }, onEdge)).toMatch(/they meet on the outline/);
  });
});
