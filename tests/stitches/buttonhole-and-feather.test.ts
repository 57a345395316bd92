import { describe, expect, test } from 'vitest';
import type { Unit, UnitLeg, Values } from '../../src/stitches/stitch.js';
import { dictionary, endsOf, legNamed, nodeAt, stitchNamed } from './dictionary.js';
import { asideOf, called, cross, distances, lengthOf, middleOf, pathOf } from './leg-lines.js';
import { always, first, last, row } from './rows.js';

const ONE_EDGED = [
  'closed-blanket',
  'crossed-blanket',
  'triangular-blanket',
  'up-and-down-blanket',
  'knotted-blanket',
  'graded-blanket',
  'grouped-blanket',
  'half-wheels',
];
const ARMS = ['arm', 'first arm', 'second arm', 'last arm', 'spoke', 'last spoke'];

describe.each(ONE_EDGED)('%s', (name) => {
  const stitch = stitchNamed(name);

  // Day and Buckle, Art in Needlework, 1900, Buttonhole-stitch: "pre-eminently a one-edged stitch".
  test('has one edge: all its arms lie to one hand, as far out as asked', () => {
    always(stitch, (unit, { width }) => {
      expect(unit.reach.right).toBeLessThan(0.7);
      expect(unit.reach.left).toBeLessThanOrEqual(width + 0.8);
    });
    expect(stitch.build({}).reach.left).toBeGreaterThan(4);
  });

  // Dillmont, figure 171: in above the line, out below it and above the working thread: work goes on along the heading
  // from left to right (also Christie, Beeton, Day).
  test('goes on along its heading and never back', () => {
    const along = name === 'up-and-down-blanket' ? ['second arm'] : ['heading', 'base', 'rim'];
    const headings = called(row(stitch, 4), ...along).map((leg) => last(leg)[0] - first(leg)[0]);
    expect(headings.length).toBeGreaterThan(0);
    expect(Math.min(...headings)).toBeGreaterThan(0);
  });

  // Common practice: a row begins and ends with whole groups of arms.
  test('ends a row with as many arms as every repeat has', () => {
    const unit = stitch.build({});
    const inUnit = called(unit.legs, ...ARMS).filter(({ kind }) => kind !== 'under').length;
    const legs = row(stitch, 3);
    const single = ['knotted-blanket', 'graded-blanket'].includes(name);
    // a wheel stands in the middle of its repeat, so that rows are whole without another
    const more = name === 'half-wheels' ? 0 : single ? 1 : inUnit;
    expect(called(legs, ...ARMS).filter(({ unit: k }) => k === 3)).toHaveLength(more);
  });
});

describe('closed and triangular blanket', () => {
  const arms = (unit: Unit) => called(unit.legs, ...ARMS);

  // inaminuteago.com, Closed buttonhole: the second arm goes in beside the tip of the first and closes a triangle.
  // McGlauflin, Handicraft for Girls, 1910 (year from memory), Blanket Stitch: "three, five or seven stitches may radiate
  // from one point".
  test('gather two arms to a hole, or three and more', () => {
    expect(arms(stitchNamed('closed-blanket').build({}))).toHaveLength(2);
    for (const count of [3, 4, 5]) {
      const unit = stitchNamed('triangular-blanket').build({ arms: count });
      expect(arms(unit)).toHaveLength(count);
      expect(new Set(arms(unit).map(({ to }) => to)).size).toBe(1);
      expect(new Set(arms(unit).map(({ from }) => from)).size).toBe(count);
    }
    const [one, other] = arms(stitchNamed('closed-blanket').build({}));
    expect(other.to).toBe(one.to);
  });

  // Day and Buckle, illustration 22, J: gathered to a point, then another set: the point stands over the middle of its feet.
  test.each(['closed-blanket', 'triangular-blanket'])(
    '%s stands its tip over the middle of its feet',
    (name) => {
      always(stitchNamed(name), (unit) => {
        const feet = arms(unit).map((arm) => endsOf(arm)[0][0]);
        const [, [tip]] = endsOf(arms(unit)[0]);
        expect((Math.min(...feet) + Math.max(...feet)) / 2).toBeCloseTo(tip, 9);
      });
    },
  );
});

describe('crossed blanket', () => {
  const crossed = stitchNamed('crossed-blanket');

  // Christie, Embroidery and Tapestry Weaving, 1912, figure 50: "taken slanting-wise, so that they cross each other".
  // Day and Buckle, To work E: one sloping to the right, "then a smaller buttonhole-stitch across this from the left".
  test('crosses each second arm over the first, and only those two', () => {
    always(crossed, (unit) => {
      const [one, two] = [legNamed(unit, 'first arm'), legNamed(unit, 'second arm')];
      expect(cross(endsOf(one), endsOf(two))).toBe(true);
      expect(unit.legs.indexOf(two)).toBeGreaterThan(unit.legs.indexOf(one));
    });
    const legs = called(row(crossed, 4), 'first arm', 'second arm');
    for (let i = 0; i < legs.length; i++) {
      for (let j = i + 1; j < legs.length; j++) {
        expect(cross(legs[i].xy, legs[j].xy)).toBe(i % 2 === 0 && j === i + 1);
      }
    }
  });

  test('slopes the first to the right, and makes the second smaller', () => {
    const [one, two] = ['first arm', 'second arm'].map((name) => legNamed(crossed.build({}), name));
    expect(endsOf(one)[1][0]).toBeGreaterThan(endsOf(one)[0][0]);
    expect(endsOf(two)[1][0]).toBeLessThan(endsOf(two)[0][0]);
    expect(lengthOf(two)).toBeLessThan(lengthOf(one));
  });

  test('has its seat where the arms cross', () => {
    always(crossed, (unit) => {
      const seat = unit.seats.find(({ name }) => name === 'crossing')!;
      const near = (leg: UnitLeg) => Math.min(...distances(pathOf(leg), [seat.u, seat.v]));
      expect(near(legNamed(unit, 'first arm'))).toBeLessThan(0.4);
      expect(near(legNamed(unit, 'second arm'))).toBeLessThan(0.4);
    });
  });
});

describe('up-and-down blanket', () => {
  const upAndDown = stitchNamed('up-and-down-blanket');

  // pintangle.com, Up and down buttonhole stitch: the loop left by the second stitch is the bar that ties both at the base.
  test('ties each pair at the foot with a loop that lies over the second arm', () => {
    always(upAndDown, (unit) => {
      const [tie, arm] = [legNamed(unit, 'tie'), legNamed(unit, 'second arm')];
      expect(tie.from).toBe(legNamed(unit, 'first arm').from);
      expect(cross(pathOf(tie), pathOf(arm))).toBe(true);
      expect(unit.legs.indexOf(tie)).toBeGreaterThan(unit.legs.indexOf(arm));
    });
  });

  // bigbgsd.blogspot.com, 15 February 2012: first stitch downwards; second in on the lower line just to the right, out on
  // the upper one; then down and on.
  test('works the second arm upwards behind and down in front, and goes on from its foot', () => {
    always(upAndDown, (unit) => {
      const [rise, arm] = [legNamed(unit, 'rise'), legNamed(unit, 'second arm')];
      const [low, high] = endsOf(rise);
      expect(low[0]).toBeGreaterThan(endsOf(legNamed(unit, 'first arm'))[0][0]);
      expect(low[1]).toBeLessThan(0.5);
      expect(arm.from).toBe(rise.to);
      expect(high[1]).toBeGreaterThan(2.9);
      expect(unit.joins.map(([here]) => here)).toEqual([arm.to]);
    });
  });

  test('stands the arms of a pair closer than the pairs', () => {
    always(upAndDown, (unit) => {
      const [[one]] = endsOf(legNamed(unit, 'first arm'));
      const [, on] = endsOf(legNamed(unit, 'second arm'));
      const apart = middleOf(legNamed(unit, 'rise'))[0] - one;
      expect(on[0] - one - apart).toBeGreaterThan(apart * 1.3);
    });
  });
});

// aboutartandcraft.blogspot.com, August 2012, Knotted buttonhole stitch: a straight stitch with a knot at its top.
test('knotted blanket has a knot of 1.3 to 1.8 mm on the tip of every arm', () => {
  const legs = row(stitchNamed('knotted-blanket'), 4);
  expect(called(legs, 'knot').map(({ from }) => from)).toEqual(called(legs, 'arm').map(({ to }) => to));
  always(stitchNamed('knotted-blanket'), (unit, { width }) => {
    const { size, from } = legNamed(unit, 'knot');
    expect(size).toBeGreaterThanOrEqual(1.3);
    expect(size).toBeLessThanOrEqual(1.8);
    expect(nodeAt(unit, from)[1] + size / 2).toBeCloseTo(width, 9);
  });
});

describe('graded blanket', () => {
  const graded = stitchNamed('graded-blanket');
  const heights = (values: Values) => called(row(graded, 2, values), 'arm').map((arm) => last(arm)[1]);

  // Common practice: 1-3-5-3-1. Day and Buckle, illustration 22, B and C: "the stitches vary in length".
  test('rises and falls as 1-3-5-3-1', () => {
    const [low] = heights({});
    expect(heights({}).map((height) => height / low)).toEqual(
      [1, 3, 5, 3, 1, 3, 5, 3, 1].map((step) => expect.closeTo(step, 9)),
    );
  });

  test('rises and falls in as many even steps as asked, and sets its arms evenly', () => {
    always(graded, (unit, { steps, width }) => {
      const arms = called(unit.legs, 'arm');
      expect(arms).toHaveLength(2 * steps - 2);
      const rises = arms.map((arm) => endsOf(arm)[1][1]);
      expect(Math.max(...rises)).toBeCloseTo(width, 9);
      expect(rises.indexOf(Math.max(...rises))).toBe(steps - 1);
      const changes = [...rises, rises[0]].slice(1).map((height, i) => Math.abs(height - rises[i]));
      expect(Math.max(...changes) - Math.min(...changes)).toBeLessThan(1e-9);
      for (let i = 0; i < arms.length; i++)
        expect(endsOf(arms[i])[0][0]).toBeCloseTo((i * unit.length) / arms.length, 9);
    });
  });
});

// Higgin, Handbook of Embroidery, 1880, Blanket Stitch: "by working two or three together, and leaving a space between
// them and the next set".
test('grouped blanket leaves a wider space between groups than between the arms of one', () => {
  always(stitchNamed('grouped-blanket'), (unit, { arms }) => {
    const feet = called(unit.legs, 'arm', 'last arm').map((arm) => endsOf(arm)[0][0]);
    const spaces = feet.slice(1).map((foot, i) => foot - feet[i]);
    expect(feet).toHaveLength(arms);
    expect(feet[0] + unit.length - feet[arms - 1]).toBeGreaterThan(Math.max(...spaces) * 1.4);
  });
});

describe('blanket half-wheels', () => {
  const wheels = stitchNamed('half-wheels');

  // Christie, figure 55: "the needle enters the material at the same point, always in the centre"; the heading outlines it.
  test('send all spokes of a wheel to one hole in the seam, and outline it with the heading', () => {
    always(wheels, (unit, { spokes }) => {
      const all = called(unit.legs, 'spoke', 'last spoke');
      expect(all).toHaveLength(spokes);
      expect(new Set(all.map(({ to }) => to)).size).toBe(1);
      expect(nodeAt(unit, all[0].to)).toEqual([unit.length / 2, 0]);
      const rims = called(unit.legs, 'rim');
      expect(rims.map(({ from, to }) => [from, to])).toEqual(
        all.slice(1).map(({ from }, i) => [all[i].from, from]),
      );
      for (const rim of rims) {
        const [a, b] = endsOf(rim);
        expect(asideOf(a, b, middleOf(rim))).toBeGreaterThan(0);
      }
    });
  });

  // Baldt, Clothing for Women, 1916 (year from memory): "usually five or seven to complete the turn", the middle one
  // straight out.
  test('take five or seven spokes for half a turn, the middle one straight out', () => {
    for (const spokes of [5, 7]) {
      const all = called(wheels.build({ spokes }).legs, 'spoke', 'last spoke');
      const [rim, center] = endsOf(all[(spokes - 1) / 2]);
      expect(rim[0]).toBeCloseTo(center[0], 9);
      for (const end of [all[0], all[spokes - 1]]) expect(endsOf(end)[0][1]).toBeCloseTo(0, 9);
    }
    expect([5, 7]).toContain(wheels.parameters.find(({ name }) => name === 'spokes')!.default);
  });

  test('do not touch each other', () => {
    always(wheels, (unit) => {
      const [from, to] = endsOf(legNamed(unit, 'heading'));
      expect(to[0] - from[0]).toBeGreaterThanOrEqual(1 - 1e-9);
    });
  });
});

describe('ladder blanket', () => {
  const ladder = stitchNamed('ladder-blanket');

  // Day and Buckle, illustration 22, To work G: a two-edged variety; a bar first; the slanting thread is pulled out "to
  // form a square", and the next stitch goes in at that corner.
  test('has a heading on both edges, and square rungs whose corners both headings share', () => {
    const legs = row(ladder, 5);
    const rungs = called(legs, 'rung');
    expect(legs[0]).toBe(rungs[0]);
    expect(rungs).toHaveLength(6);
    called(legs, 'upper heading').forEach((heading, k) => {
      expect([heading.from, heading.to]).toEqual([rungs[k].to, rungs[k + 1].to]);
    });
    called(legs, 'lower heading').forEach((heading, k) => {
      expect([heading.from, heading.to]).toEqual([rungs[k].from, rungs[k + 1].from]);
    });
    for (const rung of rungs) expect(first(rung)[0]).toBeCloseTo(last(rung)[0], 9);
  });
});

describe('barb', () => {
  const barb = stitchNamed('barb');

  // inaminuteago.com, Barb stitch: two rows of buttonhole with their loops back to back, whipped with a second thread.
  test('is two rows of blanket back to back, each the mirror of the other', () => {
    always(barb, (unit, { width }) => {
      for (const part of ['arm', 'heading']) {
        const right = pathOf(legNamed(unit, `right ${part}`)).map(([u, v]) => [u, 0 - v]);
        expect(pathOf(legNamed(unit, `left ${part}`)).flat()).toEqual(
          right.flat().map((x) => expect.closeTo(x, 9)),
        );
      }
      expect([unit.reach.left, unit.reach.right]).toEqual([
        expect.closeTo(width / 2, 9),
        expect.closeTo(width / 2, 9),
      ]);
    });
  });

  test('is whipped by a second thread, every wrap across both headings and over them', () => {
    expect(barb.threads).toEqual(['rows', 'whipping']);
    always(barb, (unit, { wraps }) => {
      const all = called(unit.legs, 'wrap');
      expect(all).toHaveLength(wraps);
      for (const wrap of all) {
        expect(wrap.thread).toBe(1);
        const beyond = unit.length;
        for (const side of ['left heading', 'right heading']) {
          const line = pathOf(legNamed(unit, side));
          expect(
            cross(pathOf(wrap), [
              [-beyond, line[0][1]],
              [2 * beyond, line[0][1]],
            ]),
          ).toBe(true);
        }
      }
    });
  });
});

// The same names for everyone: no name of these stitches is given to two.
test('no stitch has a name of another', () => {
  const owners = new Map<string, Set<string>>();
  for (const { name, title, otherNames } of dictionary) {
    for (const call of [name, title, ...otherNames]) {
      const key = call.toLowerCase().replace(/[^a-z0-9]/g, '');
      owners.set(key, (owners.get(key) ?? new Set()).add(name));
    }
  }
  expect([...owners].filter(([, stitches]) => stitches.size > 1)).toEqual([]);
});
