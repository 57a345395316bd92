import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Stitch, Unit, UnitLeg, Values } from '../../src/stitches/stitch.js';
import { endsOf, legNamed, nodeAt, stitchNamed } from './dictionary.js';
import { type LaidLeg, layRow } from './lay-row.js';

/** Property over the stitch's own ranges. */
function always(stitch: Stitch, holds: (unit: Unit, values: Record<string, number>) => void): void {
  const anyValues = fc.record(
    Object.fromEntries(
      stitch.parameters.map(({ name, min, max }) => [
        name,
        fc.double({ min, max, noNaN: true, noDefaultInfinity: true }),
      ]),
    ),
  );
  fc.assert(
    fc.property(anyValues, (values) => holds(stitch.build(values), values as Record<string, number>)),
    { numRuns: 60 },
  );
}

const row = (stitch: Stitch, count: number, values: Values = {}): LaidLeg[] =>
  layRow(stitch.build(values), stitch.symmetry === 'glide', count);
const legsNamed = (legs: readonly LaidLeg[], name: string) => legs.filter((leg) => leg.name === name);
const first = (leg: LaidLeg) => leg.xy[0];
const last = (leg: LaidLeg) => leg.xy[leg.xy.length - 1];

/** How far the middle of a leg lies off the straight line between its ends, in mm: positive to the left hand. */
function bow(leg: UnitLeg): number {
  const [[au, av], [bu, bv]] = endsOf(leg);
  const half = 2 * Math.floor(leg.path.length / 4);
  const [mu, mv] = [leg.path[half], leg.path[half + 1]];
  return ((bu - au) * (mv - av) - (bv - av) * (mu - au)) / Math.hypot(bu - au, bv - av);
}

/** Where two straight legs cross, or null. */
function crossing(a: LaidLeg, b: LaidLeg): [number, number] | null {
  const [p, q, r, s] = [first(a), last(a), first(b), last(b)];
  const d = [q[0] - p[0], q[1] - p[1]];
  const e = [s[0] - r[0], s[1] - r[1]];
  const det = d[0] * e[1] - d[1] * e[0];
  if (Math.abs(det) < 1e-12) return null;
  const t = ((r[0] - p[0]) * e[1] - (r[1] - p[1]) * e[0]) / det;
  const w = ((r[0] - p[0]) * d[1] - (r[1] - p[1]) * d[0]) / det;
  return t > 0 && t < 1 && w > 0 && w < 1 ? [p[0] + t * d[0], p[1] + t * d[1]] : null;
}

describe('feather', () => {
  const feather = stitchNamed('feather');

  // Day and Buckle, Art in Needlework, 1900, illustrations 25-26: "These are always four in number, indicating at once,
  // that the stitch is made with four strokes of the needle".
  test('stands on four lines: the holes of a row lie on two outer and two inner ones', () => {
    always(feather, (unit, { width, core }) => {
      const holes = layRow(unit, true, 4)
        .filter(({ name }) => name !== 'hold')
        .flatMap((leg) => [first(leg), last(leg)])
        .map(([, v]) => v);
      const lines = [-width / 2, (-width * core) / 2, (width * core) / 2, width / 2];
      for (const v of holes) expect(Math.min(...lines.map((line) => Math.abs(line - v)))).toBeLessThan(1e-9);
      for (const line of lines) expect(holes.some((v) => Math.abs(line - v) < 1e-9)).toBe(true);
    });
  });

  // Day and Buckle: "simply buttonholing in a slanting direction, first to the right side and then to the left".
  test('throws its arms to right and left in turn', () => {
    const tips = legsNamed(row(feather, 8), 'arm').map((arm) => Math.sign(last(arm)[1]));
    expect(tips).toEqual([-1, 1, -1, 1, -1, 1, -1, 1]);
  });

  // Christie, Embroidery and Tapestry Weaving, 1912, figure 65 (figure seen): each new loop starts inside the one before.
  test('starts each loop in the bottom of the loop before', () => {
    const legs = row(feather, 6);
    for (let k = 1; k < 6; k++) {
      const arm = legsNamed(legs, 'arm')[k - 1];
      expect(legsNamed(legs, 'strand')[k].from).toBe(arm.from);
    }
  });

  // The same figure: a loop is wide at its two ends and drawn to its bottom, where the next stitch pulls it on.
  test('arm and strand are pulled into curves, hollow towards each other', () => {
    always(feather, (unit) => {
      expect(bow(legNamed(unit, 'arm')) * bow(legNamed(unit, 'strand'))).toBeGreaterThan(0);
    });
    for (const name of ['arm', 'strand']) {
      expect(Math.abs(bow(legNamed(feather.build({}), name)))).toBeGreaterThan(0.3);
    }
  });

  test('slants: each tip lies behind the bottom of its loop', () => {
    always(feather, (unit) => {
      const [[base], [tip]] = endsOf(legNamed(unit, 'arm'));
      expect(tip).toBeLessThan(base);
    });
  });
});

// Common practice: the last loop of a row is held by a short stitch over it.
test.each(['feather', 'double-feather', 'cretan'])(
  'a row of %s ends with one short stitch that holds its last loop',
  (name) => {
    const legs = row(stitchNamed(name), 4);
    const holds = legsNamed(legs, 'hold');
    expect(holds).toEqual([legs.at(-1)]);
    const [[au, av], [bu, bv]] = [first(holds[0]), last(holds[0])];
    expect(legs.slice(0, -1).some(({ from, to }) => from === holds[0].from || to === holds[0].from)).toBe(
      true,
    );
    expect(bu).toBeGreaterThan(au);
    expect(Math.hypot(bu - au, bv - av)).toBeGreaterThan(0.8);
    expect(Math.hypot(bu - au, bv - av)).toBeLessThan(1.6);
  },
);

describe('double feather', () => {
  const double = stitchNamed('double-feather');

  // Patton, Home and School Sewing, 1901 (year from memory), chapter XXIII: two, three or even four stitches on each side before changing.
  test('makes two loops to one hand before it changes', () => {
    const arms = row(double, 6).filter(({ name }) => name.endsWith('arm'));
    const turns = arms.map((arm) => Math.sign(last(arm)[1] - first(arm)[1]));
    expect(turns).toEqual([1, 1, -1, -1, 1, 1, -1, -1, 1, 1, -1, -1]);
  });

  test('steps outwards with the second loop, and its loops are of one size', () => {
    always(double, (unit) => {
      const [[au, av], [bu, bv]] = endsOf(legNamed(unit, 'first arm'));
      const [[cu, cv], [du, dv]] = endsOf(legNamed(unit, 'second arm'));
      expect(Math.abs(dv)).toBeGreaterThan(Math.abs(bv));
      expect([du - cu, dv - cv]).toEqual([expect.closeTo(bu - au, 9), expect.closeTo(bv - av, 9)]);
    });
  });
});

describe('herringbone', () => {
  const herringbone = stitchNamed('herringbone');

  // Dillmont, Encyclopedia of Needlework, figure 39: two rows of stitches; Day and Buckle, illustration 20.
  test('has its holes on two lines', () => {
    always(herringbone, (unit, { width }) => {
      for (let i = 1; i < unit.nodes.length; i += 2)
        expect(Math.abs(unit.nodes[i])).toBeCloseTo(width / 2, 9);
    });
  });

  // Dillmont, figure 39: "threads crossing each other diagonally".
  test('crosses every stroke with the one before, and only with its neighbors', () => {
    const strokes = legsNamed(row(herringbone, 10), 'stroke');
    for (let i = 0; i < strokes.length; i++) {
      for (let j = i + 1; j < strokes.length; j++) {
        expect(crossing(strokes[i], strokes[j]) !== null).toBe(j === i + 1);
      }
    }
  });

  // Day and Buckle, To work A: out exactly above where it went in on the other edge, so the pick-up is half the pitch and
  // strokes cross at a quarter and three quarters of the height, over the middle of a pick-up (arithmetic from that).
  test('with its usual pick-up crosses at a quarter and at three quarters of the height', () => {
    const legs = row(herringbone, 6);
    const width = herringbone.build({}).reach.left * 2;
    const strokes = legsNamed(legs, 'stroke');
    const pickUps = legsNamed(legs, 'pick-up');
    for (let i = 1; i < strokes.length; i++) {
      const at = crossing(strokes[i - 1], strokes[i])!;
      expect(Math.abs(at[1])).toBeCloseTo(width / 4, 9);
      const taken = pickUps[i - 1];
      expect(at[0]).toBeCloseTo((first(taken)[0] + last(taken)[0]) / 2, 9);
      expect(Math.sign(at[1])).toBe(Math.sign(first(taken)[1]));
    }
    for (let i = 2; i < strokes.length; i++) {
      // the hole a stroke comes out of is level with the hole that the stroke before last went into
      expect(first(strokes[i])[0]).toBeCloseTo(last(strokes[i - 2])[0], 9);
    }
  });

  // Day and Buckle, To work F; Christie, figure 63: "commencing each one at the point where the last one ended".
  test('in its close form shares the holes of neighboring pick-ups', () => {
    const strokes = legsNamed(row(herringbone, 8, { pickUp: 2 }), 'stroke');
    for (let i = 3; i < strokes.length; i++) {
      expect(first(strokes[i])).toEqual([
        expect.closeTo(last(strokes[i - 3])[0], 9),
        expect.closeTo(last(strokes[i - 3])[1], 9),
      ]);
    }
  });

  // Hands, Church Needlework, 1909 (year from memory): the threads cross naturally, without any intervention of the thumb: no loops.
  test('is straight and taut throughout', () => {
    for (const leg of herringbone.build({}).legs) expect(leg.kind).not.toMatch(/curve|loop/);
  });

  test('steps back for the pick-up, and hides it under the threads that cross there', () => {
    always(herringbone, (unit) => {
      const pickUp = legNamed(unit, 'pick-up');
      const [[inU, edge], [outU]] = endsOf(pickUp);
      expect(outU).toBeLessThan(inU);
      const seat = unit.seats.find(({ name }) => name === 'crossing')!;
      expect(pickUp.path[2]).toBeCloseTo(seat.u, 9);
      expect(pickUp.path[3]).toBeGreaterThan(seat.v);
      expect(pickUp.path[3]).toBeLessThan(edge);
    });
  });
});

describe('chevron', () => {
  const chevron = stitchNamed('chevron');

  // TRC Leiden, TRC Needles, Chevron Stitch (citing Mary Thomas, 1934): a bar on each of two lines; the thread comes out
  // at its exact center; the diagonal ends at the center of the next bar on the other line.
  test('leads each diagonal from the center of a bar to the center of the next one on the other line', () => {
    const legs = row(chevron, 7);
    const bars = legsNamed(legs, 'bar');
    legsNamed(legs, 'diagonal').forEach((diagonal, k) => {
      const center = (bar: LaidLeg) => (first(bar)[0] + last(bar)[0]) / 2;
      expect(first(diagonal)[0]).toBeCloseTo(center(bars[k]), 9);
      expect(last(diagonal)[0]).toBeCloseTo(center(bars[k + 1]), 9);
      expect(Math.sign(first(bars[k])[1])).toBe(-Math.sign(first(bars[k + 1])[1]));
      expect(Math.abs(first(diagonal)[1] - first(bars[k])[1])).toBeLessThanOrEqual(0.15 + 1e-9);
    });
  });

  // The same page: diagonals do not cross.
  test('crosses no diagonal with another', () => {
    const diagonals = legsNamed(row(chevron, 8), 'diagonal');
    for (let i = 0; i < diagonals.length; i++) {
      for (let j = i + 1; j < diagonals.length; j++) expect(crossing(diagonals[i], diagonals[j])).toBeNull();
    }
  });

  test('lays its bars along the line, apart from each other, and ends on one', () => {
    always(chevron, (unit) => {
      const legs = layRow(unit, true, 6);
      const bars = legsNamed(legs, 'bar');
      expect(bars).toHaveLength(7);
      for (const bar of bars) expect(first(bar)[1]).toBe(last(bar)[1]);
      for (let i = 2; i < bars.length; i++) expect(first(bars[i])[0]).toBeGreaterThan(last(bars[i - 2])[0]);
    });
  });
});

describe('blanket', () => {
  const blanket = stitchNamed('blanket');

  // Christie, figure 48 (figure seen): uprights stand square to the line and the heading lies along it.
  test('stands its arms square on a heading that lies in the seam', () => {
    always(blanket, (unit) => {
      const [foot, tip] = endsOf(legNamed(unit, 'arm'));
      expect(Math.abs(Math.atan2(tip[0] - foot[0], tip[1] - foot[1]))).toBeLessThan((5 * Math.PI) / 180);
      const [from, to] = endsOf(legNamed(unit, 'heading'));
      expect([from[1], to[1]]).toEqual([0, 0]);
      for (let i = 1; i < legNamed(unit, 'heading').path.length; i += 2) {
        expect(Math.abs(legNamed(unit, 'heading').path[i])).toBeLessThan(0.6);
      }
    });
  });

  // Day and Buckle, Art in Needlework, 1900, Buttonhole-stitch: "pre-eminently a one-edged stitch".
  test('has one edge: all its arms lie to one hand', () => {
    always(blanket, (unit, { width }) => {
      expect(unit.reach.left).toBeCloseTo(width, 9);
      expect(unit.reach.right).toBeLessThan(0.6);
    });
  });

  // McGlauflin, Handicraft for Girls, 1910 (year from memory): "As far apart as the depth of the stitch is a good rule".
  test('is usually as far apart as it is deep', () => {
    const { length, reach } = blanket.build({});
    expect(length).toBe(reach.left);
  });

  // Dillmont, figure 171: in above, out below and above the working thread: each arm catches the heading before it.
  test('catches the heading with the foot of the next arm, and ends with an arm', () => {
    const legs = row(blanket, 5);
    const arms = legsNamed(legs, 'arm');
    const headings = legsNamed(legs, 'heading');
    expect(arms).toHaveLength(6);
    headings.forEach((heading, k) => {
      expect(heading.from).toBe(arms[k].from);
      expect(heading.to).toBe(arms[k + 1].from);
      expect(legs.indexOf(heading)).toBeLessThan(legs.indexOf(arms[k + 1]));
    });
  });
});

describe('Cretan', () => {
  const cretan = stitchNamed('cretan');

  // Christie, figure 69 and its text: two outer and two inner lines; in on an outer line, out on the inner line beside
  // it, to either hand in turn.
  test('goes in on an outer and comes out level on the inner line beside it', () => {
    always(cretan, (unit, { width, plait }) => {
      const [tip, foot] = endsOf(legNamed(unit, 'dip'));
      expect(tip).toEqual([expect.closeTo(0, 9), expect.closeTo(width / 2, 9)]);
      expect(foot).toEqual([expect.closeTo(0, 9), expect.closeTo((width * plait) / 2, 9)]);
    });
    const tips = legsNamed(row(cretan, 6), 'arm').map((arm) => Math.sign(last(arm)[1]));
    expect(tips).toEqual([1, -1, 1, -1, 1, -1, 1]);
  });

  // Figure 69, measured on the figure: bands of 38, 30 and 39, so that the plait takes 28 % of the width.
  test('has a plait of about the proportion in the figure', () => {
    const plait = cretan.parameters.find(({ name }) => name === 'plait')!;
    expect(Math.abs(plait.default - 30 / (38 + 30 + 39))).toBeLessThan(0.06);
  });

  // The same figure: an outer band is 1.27 times as broad as the plait, and the arms lie straight across it.
  test('has arms longer than its plait is broad, straight across to either edge', () => {
    const unit = cretan.build({});
    const arm = legNamed(unit, 'arm');
    const [, tip] = endsOf(arm);
    const [, [, inner]] = endsOf(legNamed(unit, 'dip'));
    expect((tip[1] - inner) / (2 * inner)).toBeGreaterThan(38 / 30 - 0.05);
    for (const values of [{}, cretan.smallest, { repeat: 9, width: 18 }]) {
      const [from, to] = endsOf(legNamed(cretan.build(values), 'arm'));
      expect(Math.abs(Math.atan2(to[0] - from[0], to[1] - from[1]))).toBeLessThan((15 * Math.PI) / 180);
      expect(Math.abs(bow(legNamed(cretan.build(values), 'arm')))).toBeLessThan(0.15);
    }
  });

  // The same figure: arms stand close. Feather's stand as far apart as it is wide (Ingalls, 1911, year from memory).
  test('stands its arms closer together than feather does, for its width', () => {
    const closeness = (stitch: Stitch) => {
      const { length, reach } = stitch.build({});
      return length / reach.left;
    };
    expect(closeness(cretan)).toBeLessThan(0.6 * closeness(stitchNamed('feather')));
  });

  // The same figure: between one pick-up and the next nothing shows but arm and strand.
  test('hides the way back from the tip under its arm and the strand that follows', () => {
    const apart = (point: readonly number[], leg: UnitLeg): number => {
      let least = Infinity;
      const { path } = leg;
      for (let i = 2; i < path.length; i += 2) {
        const [ax, ay, bx, by] = path.subarray(i - 2, i + 2);
        const length = Math.hypot(bx - ax, by - ay);
        const t = ((point[0] - ax) * (bx - ax) + (point[1] - ay) * (by - ay)) / length ** 2;
        const at = Math.min(1, Math.max(0, t));
        least = Math.min(least, Math.hypot(point[0] - ax - at * (bx - ax), point[1] - ay - at * (by - ay)));
      }
      return least;
    };
    for (const values of [{}, cretan.smallest, { repeat: 9, width: 18 }]) {
      const unit = cretan.build(values);
      const { path } = legNamed(unit, 'dip');
      const covers = [legNamed(unit, 'arm'), legNamed(unit, 'strand')];
      const strayed: number[] = [];
      for (let i = 2; i < path.length; i += 2) {
        for (let k = 0; k <= 10; k++) {
          const at = [0, 1].map((j) => path[i - 2 + j] + (k / 10) * (path[i + j] - path[i - 2 + j]));
          strayed.push(Math.min(...covers.map((leg) => apart(at, leg))));
        }
      }
      // Half of what three passes of No. 40 thread cover.
      expect(Math.max(...strayed)).toBeLessThan(0.35);
    }
  });

  // Christie, on figure 69: picking up less makes the plait broader and the outer arms shorter.
  test('has shorter arms where the plait is broader', () => {
    const arm = (plait: number) => {
      const [tip, foot] = endsOf(legNamed(cretan.build({ plait }), 'dip'));
      return tip[1] - foot[1];
    };
    expect(arm(0.5)).toBeLessThan(arm(0.3));
  });

  // The same text: the thread is kept to the right of the needle, so that the new thread comes out inside the loop.
  test('brings the new thread out inside the loop and over it', () => {
    always(cretan, (unit) => {
      const [turn] = endsOf(legNamed(unit, 'arm'));
      const [foot] = endsOf(legNamed(unit, 'strand'));
      expect(turn[0]).toBeGreaterThan(foot[0]);
      expect(turn[1]).toBeLessThan(foot[1]);
      const order = unit.legs.map(({ name }) => name);
      expect(order.indexOf('strand')).toBeGreaterThan(order.indexOf('arm'));
    });
  });
});

describe('fly', () => {
  const fly = stitchNamed('fly');

  // Royal School of Needlework, Stitch Bank, and indian-embroidery.com, Fly stitch: two level tips, pulled to a V at the
  // center below and anchored there by a stitch straight on.
  test('is a V of two level arms with an anchor that goes straight on', () => {
    always(fly, (unit) => {
      const [left, hold] = endsOf(legNamed(unit, 'left arm'));
      const [, right] = endsOf(legNamed(unit, 'right arm'));
      const [from, to] = endsOf(legNamed(unit, 'anchor'));
      expect(left[0]).toBe(right[0]);
      expect(left[1]).toBe(-right[1]);
      expect(hold[0]).toBeGreaterThan(left[0]);
      expect([hold[1], from[1], to[1]]).toEqual([0, 0, 0]);
      expect(to[0]).toBeGreaterThan(from[0]);
    });
  });

  // indian-embroidery.com: in a vertical row the anchor goes into the hole that the next group comes out of.
  test('in a row anchors each V in the hole of the next', () => {
    const legs = row(fly, 5);
    const anchors = legsNamed(legs, 'anchor');
    for (let k = 1; k < 5; k++) expect(anchors[k - 1].to).toBe(legsNamed(legs, 'right arm')[k].from);
  });

  test('lays the anchor over the loop it holds', () => {
    const order = fly.build({}).legs.map(({ name }) => name);
    expect(order.indexOf('anchor')).toBe(order.length - 1);
  });
});

describe('lazy daisy sprigs', () => {
  const daisy = stitchNamed('lazy-daisy');
  const petals = ['left', 'middle', 'right'];

  // Common practice: a petal is at least 4 x 1.4 mm, its holding stitch 1 to 1.5 mm.
  test('have petals large enough to be seen as loops, and short holding stitches', () => {
    always(daisy, (unit) => {
      for (const side of petals) {
        const halves = unit.legs.filter(({ name }) => name === `${side} petal`);
        const [base, tip] = endsOf(halves[0]);
        const long = Math.hypot(tip[0] - base[0], tip[1] - base[1]);
        expect(long).toBeGreaterThanOrEqual(4);
        const across = halves.map((half) => {
          let most = 0;
          for (let i = 0; i < half.path.length; i += 2) {
            const [u, v] = [half.path[i] - base[0], half.path[i + 1] - base[1]];
            most = Math.max(most, Math.abs(u * (tip[1] - base[1]) - v * (tip[0] - base[0])) / long);
          }
          return most;
        });
        expect(across[0] + across[1]).toBeGreaterThan(1.35);
        expect(across[0] + across[1]).toBeLessThan(0.62 * long);
        const [from, to] = endsOf(legNamed(unit, `${side} hold`));
        const held = Math.hypot(to[0] - from[0], to[1] - from[1]);
        expect(held).toBeGreaterThanOrEqual(1 - 1e-9);
        expect(held).toBeLessThanOrEqual(1.5 + 1e-9);
      }
    });
  });

  // Baldt, Clothing for Women, 1916 (year from memory), figures 235-238: in beside the hole it came from; the short stitch goes in outside
  // the tip. Christie, figure 29: each petal is one chain stitch.
  test('are loops that return to the hole they came from, each held at its tip from inside to outside', () => {
    const unit = daisy.build({});
    for (const side of petals) {
      const [out, back] = unit.legs.filter(({ name }) => name === `${side} petal`);
      expect([out.kind, back.kind]).toEqual(['loop', 'loop']);
      expect([back.from, back.to]).toEqual([out.to, out.from]);
      const hold = legNamed(unit, `${side} hold`);
      expect(hold.from).toBe(out.to);
      const reach = (node: number) => Math.hypot(...sub(nodeAt(unit, node), nodeAt(unit, out.from)));
      expect(reach(hold.to)).toBeGreaterThan(reach(hold.from));
    }
  });

  test('keep their shape where the seam bends, all about one hole in the seam', () => {
    const unit = daisy.build({});
    const stiff = unit.legs.filter(({ kind }) => kind !== 'under');
    expect(new Set(stiff.map(({ bends }) => bends))).toEqual(new Set([false]));
    expect(new Set(stiff.map(({ anchor }) => anchor)).size).toBe(1);
    expect(nodeAt(unit, stiff[0].anchor)[1]).toBe(0);
  });

  test('stand to either hand in turn, and the thread travels in the seam between them', () => {
    const legs = row(daisy, 4);
    expect(legsNamed(legs, 'middle hold').map((hold) => Math.sign(last(hold)[1]))).toEqual([1, -1, 1, -1]);
    for (const leg of legs.filter(({ kind }) => kind === 'under'))
      for (const [, v] of leg.xy) expect(Math.abs(v)).toBe(0);
  });

  test('do not touch the next sprig of their own hand, however short the repeat is made', () => {
    always(daisy, (unit) => {
      const along = unit.legs
        .filter(({ kind }) => kind !== 'under')
        .flatMap(({ path }) => [...path].filter((_, i) => i % 2 === 0));
      expect(Math.max(...along) - Math.min(...along)).toBeLessThan(2 * unit.length - 0.6);
    });
  });
});

const sub = ([a, b]: [number, number], [c, d]: [number, number]): [number, number] => [a - c, b - d];
