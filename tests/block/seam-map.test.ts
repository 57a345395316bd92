import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.js';
import { polylineLength } from '../../src/geometry/polyline.js';
import { box, build, circle, drawn, ends, mapOf, round, wholeLength } from './draw.js';

describe('a block of two patches', () => {
  const map = mapOf([
    box(0, 0, 60, 40),
    [
      [20, 0],
      [20, 40],
    ],
  ]);

  it('has one seam, from outline to outline', () => {
    expect(map.seams.map(ends)).toEqual(['20,0 to 20,40']);
    expect(map.seams[0].ends?.map(({ kind }) => kind)).toEqual(['outline', 'outline']);
    expect(map.junctions.map(({ onOutline, through }) => [onOutline, through])).toEqual([
      [true, null],
      [true, null],
    ]);
  });

  it('has the outline round both, clockwise from the top left, with its corners', () => {
    expect(round(polylineLength(map.outline!.points))).toBe(200);
    expect([...map.outline!.points.slice(0, 4)]).toEqual([0, 0, 20, 0]);
    expect(map.outline!.corners.map(({ u }) => round(u))).toEqual([0, 60, 100, 160]);
    // clockwise is turning right, which is negative
    expect(map.outline!.corners.every(({ turn }) => round(turn) === -1.57)).toBe(true);
  });

  it('has the left patch to the right hand of the seam that runs down', () => {
    expect(map.patches.map(({ id, area }) => [id, round(area)])).toEqual([
      [1, 800],
      [2, 1600],
    ]);
    expect(map.seams[0].sides).toEqual([{ from: 0, to: 40, left: 2, right: 1 }]);
  });
});

describe('junctions', () => {
  it('T: the straight seam runs through, the other butts into it', () => {
    const map = mapOf([
      box(0, 0, 60, 40),
      [
        [0, 20],
        [60, 20],
      ],
      [
        [30, 20],
        [30, 40],
      ],
    ]);
    expect(map.seams.map(ends)).toEqual(['0,20 to 60,20', '30,20 to 30,40']);
    const t = map.junctions.find(({ onOutline }) => !onOutline)!;
    expect(t.through).toBe(1);
    expect(t.arms.map(({ seam, u, sense, direction }) => [seam, u, sense, round(direction)])).toEqual([
      [1, 30, 1, 0],
      [2, 0, 1, 1.57],
      [1, 30, -1, 3.14],
    ]);
    expect(map.seams[0].crossings.map(({ u }) => u)).toEqual([30]);
    expect(map.seams[1].ends!.map(({ kind }) => kind)).toEqual(['junction', 'outline']);
    expect(map.seams[0].sides.map(({ from, to, left, right }) => [from, to, left, right])).toEqual([
      [0, 30, 1, 2],
      [30, 60, 1, 3],
    ]);
  });

  it('X: both keep their identity, the straighter runs through; of equal ones the longer', () => {
    const map = mapOf([
      box(0, 0, 60, 40),
      [
        [0, 20],
        [60, 20],
      ],
      [
        [20, 0],
        [20, 40],
      ],
    ]);
    expect(map.seams.map(ends)).toEqual(['20,0 to 20,40', '0,20 to 60,20']);
    expect(map.junctions.find(({ onOutline }) => !onOutline)!.through).toBe(2);
    expect(map.patches).toHaveLength(4);

    const bent = mapOf([
      box(0, 0, 60, 40),
      [
        [0, 20],
        [30, 20],
        [60, 24],
      ],
      [
        [30, 0],
        [30, 40],
      ],
    ]);
    expect(bent.junctions.find(({ onOutline }) => !onOutline)!.through).toBe(1);
  });

  it('X: the maker may name the other one; a seam that does not run through there is reported', () => {
    const lines = [
      box(0, 0, 60, 40),
      [
        [0, 20],
        [60, 20],
      ] as Point[],
      [
        [20, 0],
        [20, 40],
      ] as Point[],
    ];
    const named = build(lines, { through: [{ at: [21, 19], seam: 1 }] });
    expect(named.map.junctions.find(({ onOutline }) => !onOutline)!.through).toBe(1);
    expect(named.findings).toEqual([]);
    const lost = build(lines, { through: [{ at: [0, 20], seam: 1 }] });
    expect(lost.findings.map(({ code }) => code)).toEqual(['through-lost']);
  });

  it('Y: none runs through, three seams end', () => {
    const spoke = (degrees: number): Point[] => {
      const a = (degrees * Math.PI) / 180;
      return [
        [50, 50],
        [50 + 30 * Math.cos(a), 50 + 30 * Math.sin(a)],
      ];
    };
    const map = mapOf([circle(50, 50, 30), spoke(90), spoke(210), spoke(330)]);
    expect(map.seams).toHaveLength(3);
    expect(map.patches).toHaveLength(3);
    const y = map.junctions.find(({ onOutline }) => !onOutline)!;
    expect([y.through, y.arms.length]).toEqual([null, 3]);
  });
});

describe('corners and curves', () => {
  it('a corner stays inside its seam', () => {
    const map = mapOf([
      box(0, 0, 60, 40),
      [
        [0, 30],
        [25, 30],
        [25, 0],
      ],
    ]);
    expect(map.seams.map(ends)).toEqual(['25,0 to 0,30']);
    expect(map.seams[0].corners.map(({ u, turn }) => [round(u), round(turn)])).toEqual([[30, -1.57]]);
  });

  it('a curve keeps its length to 0.01 % and has no corners', () => {
    const arc = circle(0, 0, 30).filter(([x, y]) => x >= -1e-9 && y >= -1e-9);
    const map = mapOf([box(0, 0, 60, 40), arc.slice(0, -1)]);
    expect(map.seams).toHaveLength(1);
    expect(map.seams[0].corners).toEqual([]);
    expect(Math.abs(polylineLength(map.seams[0].points) / (15 * Math.PI) - 1)).toBeLessThan(1e-4);
  });
});

describe('rings', () => {
  it('a closed line alone is a ring seam, clockwise from its topmost point', () => {
    const map = mapOf([circle(50, 50, 20)]);
    expect(map.outline).toBeNull();
    expect(map.seams.map(ends)).toEqual(['50,30 to 50,30']);
    expect([map.seams[0].closed, map.seams[0].ends]).toEqual([true, null]);
    expect(map.seams[0].points[2]).toBeGreaterThan(50);
    expect(map.seams[0].sides.map(({ left, right }) => [left, right])).toEqual([[null, 1]]);
  });

  it('a filled closed line alone is a patch with an outline', () => {
    const { map, findings } = build([drawn(circle(50, 50, 20), '#aa3355')]);
    expect(map.seams).toEqual([]);
    expect(map.outline).not.toBeNull();
    expect(map.patches.map(({ fabric }) => fabric)).toEqual(['#aa3355']);
    expect(findings.map(({ code }) => code)).toEqual(['no-seams']);
  });

  it('a closed line round others is the outline, also when they do not reach it', () => {
    const map = mapOf([
      box(0, 0, 60, 40),
      [
        [10, 20],
        [50, 20],
      ],
    ]);
    expect(map.outline).not.toBeNull();
    expect(map.seams.map(ends)).toEqual(['10,20 to 50,20']);
    expect(map.seams[0].ends!.map(({ kind, junction }) => [kind, junction])).toEqual([
      ['free', -1],
      ['free', -1],
    ]);
    expect(map.seams[0].sides).toEqual([{ from: 0, to: 40, left: 1, right: 1 }]);
  });

  it('a ring inside a patch is a seam, and the patch has a hole', () => {
    const map = mapOf([box(0, 0, 60, 40), circle(30, 20, 10)]);
    expect(map.seams.map(({ closed }) => closed)).toEqual([true]);
    const [outer, inner] = [...map.patches].sort((a, b) => b.area - a.area);
    expect(outer.holes).toHaveLength(1);
    expect(outer.area + inner.area).toBeCloseTo(2400, 6);
    expect(Math.abs(inner.area / (100 * Math.PI) - 1)).toBeLessThan(1e-4);
    expect(map.seams[0].sides.map(({ left, right }) => [left, right])).toEqual([[outer.id, inner.id]]);
  });

  it('a ring that another seam butts into stays one ring', () => {
    const map = mapOf([
      box(0, 0, 60, 40),
      circle(30, 20, 10),
      [
        [40, 20],
        [60, 20],
      ],
    ]);
    const ring = map.seams.find(({ closed }) => closed)!;
    expect(map.seams).toHaveLength(2);
    expect(ring.crossings.map(({ u }) => round(u))).toEqual([round(5 * Math.PI)]);
    expect(map.junctions.find(({ onOutline }) => !onOutline)!.through).toBe(ring.id);
  });

  it('a ring cut at its very top has the junction at its start', () => {
    const map = mapOf([
      box(0, 0, 60, 40),
      circle(30, 20, 10),
      [
        [30, 0],
        [30, 10],
      ],
    ]);
    const ring = map.seams.find(({ closed }) => closed)!;
    expect(ring.crossings.map(({ u }) => u)).toEqual([0]);
    expect(ring.sides.map(({ from, to }) => [from, round(to)])).toEqual([
      [0, round(polylineLength(ring.points))],
    ]);
  });
});

describe('lines that close nothing', () => {
  it('have no patches and no outline, and free ends', () => {
    const map = mapOf([
      [
        [10, 10],
        [50, 10],
      ],
      [
        [30, 10],
        [30, 40],
      ],
    ]);
    expect([map.outline, map.patches]).toEqual([null, []]);
    expect(map.seams.map((seam) => [ends(seam), ...seam.ends!.map(({ kind }) => kind)])).toEqual([
      ['10,10 to 50,10', 'free', 'free'],
      ['30,10 to 30,40', 'junction', 'free'],
    ]);
  });
});

describe('snapping', () => {
  it('draws two ends to their mean, and three', () => {
    const map = mapOf([
      [
        [0, 50],
        [50, 50],
      ],
      [
        [50.2, 50],
        [90, 80],
      ],
      [
        [50.1, 50.15],
        [80, 10],
      ],
    ]);
    expect(map.junctions.map(({ at }) => at.map(round))).toEqual([[50.1, 50.05]]);
  });

  it('moves an end onto a line near it, from before it and from beyond it', () => {
    for (const gap of [-0.25, 0, 0.25]) {
      const map = mapOf([
        box(0, 0, 60, 40),
        [
          [20, 0 + gap],
          [20, 40 - gap],
        ],
      ]);
      expect(map.seams.map(ends)).toEqual(['20,0 to 20,40']);
      expect(map.patches).toHaveLength(2);
    }
  });

  it('leaves ends alone that are further away', () => {
    const map = mapOf([
      box(0, 0, 60, 40),
      [
        [20, 0.4],
        [20, 40],
      ],
    ]);
    expect(map.patches).toHaveLength(1);
    expect(map.seams[0].ends!.map(({ kind }) => kind)).toEqual(['free', 'outline']);
  });

  it('closes a line whose ends nearly meet', () => {
    const almost = circle(50, 50, 20).slice(0, -1);
    const map = mapOf([almost]);
    expect(map.seams.map(({ closed }) => closed)).toEqual([true]);
    expect(map.patches).toHaveLength(1);
  });

  it('makes no corner where an end of a curve is moved', () => {
    const arc = circle(0, 0.2, 30).filter(([x, y]) => x >= -1e-9 && y >= 0.19);
    const map = mapOf([box(0, 0, 60, 40), arc.slice(0, -1)]);
    expect(map.seams.map(({ corners }) => corners)).toEqual([[]]);
    expect(map.patches).toHaveLength(2);
  });
});

describe('lines along each other', () => {
  it('are one seam', () => {
    const map = mapOf([
      box(0, 0, 60, 40),
      [
        [20, 0],
        [20, 40],
      ],
      [
        [20.2, 0],
        [20.1, 40],
      ],
    ]);
    expect(map.seams).toHaveLength(1);
    expect(map.patches).toHaveLength(2);
  });

  it('that overlap in part are one line over their whole length', () => {
    const map = mapOf([
      [
        [0, 10],
        [40, 10],
      ],
      [
        [25, 10.1],
        [70, 10.1],
      ],
    ]);
    expect(map.seams).toHaveLength(1);
    expect(round(polylineLength(map.seams[0].points))).toBe(70);
  });

  it('are one seam however many there are', () => {
    // all within 0.2 mm of each other, each pair crossing: were every pair looked at in turn, this would never end
    const lines = Array.from({ length: 4096 }, (_, i): Point[] => [
      [0, 50 + 0.1 * Math.sin(i)],
      [60 + i * 1e-6, 50 + 0.1 * Math.cos(3 * i)],
    ]);
    const { map, findings } = build(lines);
    expect(map.seams).toHaveLength(1);
    expect(findings).toEqual([]);
  });

  it('drawn out and back without lifting the pen are one seam', () => {
    const map = mapOf([
      [
        [10, 10],
        [50, 20],
        [10, 10],
      ],
    ]);
    expect(map.seams.map(ends)).toEqual(['10,10 to 50,20']);
  });

  it('that cross at a slant only cross', () => {
    const slant = (20 * Math.PI) / 180;
    const map = mapOf([
      box(0, 0, 100, 100),
      [
        [0, 50],
        [100, 50],
      ],
      [
        [50 - 40 * Math.cos(slant), 50 - 40 * Math.sin(slant)],
        [50 + 40 * Math.cos(slant), 50 + 40 * Math.sin(slant)],
      ],
    ]);
    expect(map.seams).toHaveLength(2);
    expect(map.seams.every(({ crossings }) => crossings.length === 1)).toBe(true);
  });

  it('that touch, as a circle does, meet in one point and share no stretch', () => {
    const map = mapOf([
      [
        [0, 30],
        [80, 30],
      ],
      circle(40, 20, 10),
    ]);
    expect(map.junctions.map(({ at, arms }) => [...at.map(round), arms.length])).toEqual([[40, 30, 4]]);
    expect(round(wholeLength(map))).toBe(round(80 + 20 * Math.PI));
  });

  it('that overlap by less than a millimeter become one line all the same', () => {
    const map = mapOf([
      [
        [0, 10],
        [40, 10],
      ],
      [
        [39.2, 10.1],
        [70, 10.1],
      ],
    ]);
    expect(map.seams).toHaveLength(1);
    expect(map.seams[0].corners).toEqual([]);
    // one of them leans over by a tenth where they join
    expect(Math.abs(polylineLength(map.seams[0].points) - 70)).toBeLessThan(0.05);
  });

  it('wider apart than the tolerance leave a sliver, which is reported', () => {
    const { findings } = build([
      box(0, 0, 60, 40),
      [
        [20, 0],
        [20, 40],
      ],
      [
        [20.5, 0],
        [20.5, 40],
      ],
    ]);
    expect(findings.map(({ code }) => code)).toEqual(['sliver-patch']);
  });
});

describe('filled patches', () => {
  it('share their borders once and keep their fabric', () => {
    const map = mapOf([
      drawn(box(0, 0, 20, 40), '#111111'),
      drawn(box(20, 0, 40, 15), '#222222'),
      drawn(box(20, 15, 40, 25), '#333333'),
    ]);
    expect(map.seams.map(ends)).toEqual(['20,0 to 20,40', '20,15 to 60,15']);
    expect(map.patches.map(({ fabric, area }) => [fabric, round(area)])).toEqual([
      ['#222222', 600],
      ['#111111', 800],
      ['#333333', 1000],
    ]);
    expect(round(wholeLength(map))).toBe(200 + 40 + 40);
  });

  it('that overlap or gape a little share one border', () => {
    for (const off of [-0.2, 0.2]) {
      const { map, findings } = build([
        drawn(box(0, 0, 20, 40), '#111111'),
        drawn(box(20 + off, 0.1, 40, 15), '#222222'),
        drawn(box(20 + off, 15.1, 40, 25), '#333333'),
      ]);
      expect(map.patches.map(({ fabric }) => fabric).sort()).toEqual(['#111111', '#222222', '#333333']);
      expect(map.seams).toHaveLength(2);
      expect(findings).toEqual([]);
    }
  });

  it('lie over each other in the order of drawing', () => {
    const map = mapOf([drawn(box(0, 0, 60, 40), '#111111'), drawn(box(20, 10, 10, 10), '#222222')]);
    expect(map.patches.map(({ fabric }) => fabric).sort()).toEqual(['#111111', '#222222']);
    expect(map.seams.map(({ closed }) => closed)).toEqual([true]);
  });
});

describe('findings', () => {
  it('name every line that is left out', () => {
    const { findings } = build([
      box(0, 0, 60, 40),
      [
        [0, 20],
        [60, 20],
      ],
      [
        [30, 30],
        [30.1, 30.1],
      ],
    ]);
    expect(findings.map(({ code, message }) => [code, message.slice(0, 6)])).toEqual([
      ['line-left-out', 'line 3'],
    ]);
  });

  it('name a line outside the outline', () => {
    const { map, findings } = build([
      box(0, 0, 60, 40),
      [
        [20, -5],
        [20, 40],
      ],
    ]);
    expect(map.seams.map(ends)).toEqual(['20,-5 to 20,0', '20,0 to 20,40']);
    expect(findings.map(({ code, seam }) => [code, seam])).toEqual([['outside-outline', 1]]);
  });

  it('say when the block falls into parts', () => {
    const half = (x: number) => [
      box(x, 0, 40, 40),
      [
        [x, 20],
        [x + 40, 20],
      ] as Point[],
    ];
    const { map, findings } = build([...half(0), ...half(50)]);
    expect(findings.map(({ code }) => code)).toEqual(['several-parts']);
    expect(map.patches).toHaveLength(4);
  });
});
