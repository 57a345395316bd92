import { describe, expect, test } from 'vitest';
import { endsOf, legNamed, stitchNamed } from './dictionary.js';
import { type At, called, cross, lengthOf, pathOf } from './leg-lines.js';
import { always, first, last, row } from './rows.js';

describe('single feather', () => {
  const single = stitchNamed('single-feather');

  // heritageshoppe.com, Feather stitch: worked exactly like buttonhole, with the needle at an angle. Day and Buckle:
  // "buttonholing in a slanting direction".
  test('is slanting buttonhole: arms to one side, leaning back, each from the heading in the seam', () => {
    always(single, (unit, { slant, width }) => {
      const [base, tip] = endsOf(legNamed(unit, 'arm'));
      expect(base).toEqual([expect.closeTo(unit.length, 9), 0]);
      expect(tip[1]).toBeCloseTo(width, 9);
      expect((Math.atan2(base[0] - tip[0], tip[1] - base[1]) * 180) / Math.PI).toBeCloseTo(slant, 6);
      expect(unit.reach.right).toBeLessThan(0.7);
    });
  });

  test('is not a name of the two-sided feather', () => {
    const feather = stitchNamed('feather');
    expect([feather.title, ...feather.otherNames].map((name) => name.toLowerCase())).not.toContain(
      'single feather',
    );
  });
});

describe('triple feather', () => {
  const triple = stitchNamed('triple-feather');

  // Baxter, Housekeeper's Handy Book, 1913 (year from memory): "The loops may be single, or in pairs, or in threes".
  test('makes three loops to one hand before it changes', () => {
    const turns = called(row(triple, 4), 'arm').map((arm) => Math.sign(last(arm)[1] - first(arm)[1]));
    expect(turns).toEqual([1, 1, 1, -1, -1, -1, 1, 1, 1, -1, -1, -1]);
  });

  // heritageshoppe.com, Feather stitch, on triple feather: in all cases the stitches are exactly the same size.
  test('steps outwards with every loop, all of one size', () => {
    always(triple, (unit, { width }) => {
      const arms = called(unit.legs, 'arm').map((arm) => pathOf(arm));
      const shape = (arm: readonly At[]) => arm.flatMap(([u, v]) => [u - arm[0][0], v - arm[0][1]]);
      for (const arm of arms) expect(shape(arm)).toEqual(shape(arms[0]).map((x) => expect.closeTo(x, 9)));
      const outward = arms.map((arm) => arm[arm.length - 1][1]);
      expect(outward[0]).toBeLessThan(outward[1]);
      expect(outward[1]).toBeLessThan(outward[2]);
      expect(outward[2]).toBeCloseTo(width / 2, 9);
    });
  });
});

describe('closed feather', () => {
  const closed = stitchNamed('closed-feather');

  // Christie, figure 66, left: the needle picks up along the line, and "each stitch touches the one immediately above".
  test('sews both edges without a gap: each arm ends in the hole of the one before on its side', () => {
    const arms = called(row(closed, 8), 'arm');
    for (let k = 2; k < arms.length; k++) expect(arms[k].to).toBe(arms[k - 2].from);
  });

  test('leads its arms along two lines and its thread from one to the other', () => {
    always(closed, (unit) => {
      const [base, back] = endsOf(legNamed(unit, 'arm'));
      expect(base[1]).toBeCloseTo(back[1], 9);
      expect(base[0] - back[0]).toBeCloseTo(2 * unit.length, 9);
      const [from, to] = endsOf(legNamed(unit, 'strand'));
      expect(from[1]).toBeCloseTo(-to[1], 9);
    });
  });

  test('stays within its width', () => {
    always(closed, (unit, { width }) => {
      for (const leg of unit.legs)
        expect(Math.max(...pathOf(leg).map(([, v]) => Math.abs(v)))).toBeLessThan(width / 2 + 1e-9);
    });
  });
});

describe('maidenhair', () => {
  const maidenhair = stitchNamed('maidenhair');

  // embroidery.rocksea.org, Maidenhair stitch: the needle always comes out on the middle line; the tips of a set lie in a
  // straight line outwards, so that each arm is longer; then the same on the other side.
  test('comes out on the middle line always, and makes three arms to a hand, each longer than the last', () => {
    always(maidenhair, (unit) => {
      const arms = called(unit.legs, 'arm');
      expect(arms).toHaveLength(3);
      for (const arm of arms) expect(endsOf(arm)[0][1]).toBe(0);
      expect(new Set(arms.map((arm) => endsOf(arm)[1][0])).size).toBe(1);
      expect(lengthOf(arms[1])).toBeGreaterThan(lengthOf(arms[0]));
      expect(lengthOf(arms[2])).toBeGreaterThan(lengthOf(arms[1]));
    });
    const hands = called(row(maidenhair, 3), 'arm').map((arm) => Math.sign(last(arm)[1]));
    expect(hands).toEqual([1, 1, 1, -1, -1, -1, 1, 1, 1]);
  });

  test('crosses no arm with another', () => {
    const arms = called(row(maidenhair, 4), 'arm');
    const crossings = arms.flatMap((a, i) => arms.slice(i + 1).filter((b) => cross(a.xy, b.xy)));
    expect(crossings).toEqual([]);
  });
});

describe('open Cretan', () => {
  const open = stitchNamed('open-cretan');

  // Christie, figure 69: four lines; in on an outer and out on the inner line beside it, to either hand in turn.
  test('goes in on an outer line and out level on the inner one beside it, to either hand in turn', () => {
    always(open, (unit, { width, core }) => {
      const [tip, foot] = endsOf(legNamed(unit, 'dip'));
      expect(tip).toEqual([expect.closeTo(0, 9), expect.closeTo(width / 2, 9)]);
      expect(foot).toEqual([expect.closeTo(0, 9), expect.closeTo((width * core) / 2, 9)]);
    });
    expect(called(row(open, 5), 'arm').map((arm) => Math.sign(last(arm)[1]))).toEqual([1, -1, 1, -1, 1, -1]);
  });

  // Common practice: open Cretan is wider set than Cretan, and nothing crosses in its middle.
  test('is set wider than Cretan, and crosses nothing in the middle', () => {
    expect(open.build({}).length).toBeGreaterThan(stitchNamed('cretan').build({}).length * 1.5);
    const strands = called(row(open, 6), 'strand', 'arm');
    expect(strands.flatMap((a, i) => strands.slice(i + 1).filter((b) => cross(a.xy, b.xy)))).toEqual([]);
  });
});

describe('straight-stitch fans', () => {
  const fans = stitchNamed('straight-fans');

  // McGlauflin, 1910 (year from memory): "three, five or seven stitches may radiate from one point". Dressing in plain
  // straight strokes is point russe.
  test('are straight rays from one hole in the seam, as many as asked, fanned evenly to both sides', () => {
    always(fans, (unit, { rays, width }) => {
      const all = called(unit.legs, 'ray');
      expect(all).toHaveLength(rays);
      expect(new Set(all.map(({ from }) => from)).size).toBe(1);
      expect(new Set(all.map(({ kind }) => kind))).toEqual(new Set(['straight']));
      const tips = all.map((ray) => endsOf(ray)[1]);
      for (let i = 0; i < rays; i++) {
        expect(tips[i][0]).toBeCloseTo(-tips[rays - 1 - i][0], 9);
        expect(tips[i][1]).toBeCloseTo(tips[rays - 1 - i][1], 9);
      }
      expect(unit.reach.left).toBeLessThanOrEqual(width + 1e-9);
    });
  });

  test('do not touch the next fan, and their thread travels in the seam', () => {
    always(fans, (unit) => {
      for (const ray of called(unit.legs, 'ray')) {
        const [, [u]] = endsOf(ray);
        expect(Math.abs(u)).toBeLessThanOrEqual(unit.length / 2 - 0.4);
      }
      for (const leg of called(unit.legs, 'travel')) for (const [, v] of pathOf(leg)) expect(v).toBe(0);
    });
  });
});
