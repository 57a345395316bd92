import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Stitch, Unit, Values } from '../../src/stitches/stitch.js';
import { endsOf, legNamed, nodeAt, stitchNamed } from './dictionary.js';
import { type LaidLeg, layRow } from './lay-row.js';

/** Property over the stitch's own ranges. */
function always(stitch: Stitch, holds: (unit: Unit, values: Record<string, number>) => void): void {
  const anyValues = fc.record(
    Object.fromEntries(
      stitch.parameters.map(({ name, unit, min, max }) => [
        name,
        unit === 'count'
          ? fc.integer({ min, max })
          : fc.double({ min, max, noNaN: true, noDefaultInfinity: true }),
      ]),
    ),
  ) as fc.Arbitrary<Record<string, number>>;
  fc.assert(
    fc.property(anyValues, (values) => holds(stitch.build(values), values)),
    { numRuns: 60 },
  );
}

const rowOf = (stitch: Stitch, unit: Unit, count: number): LaidLeg[] =>
  layRow(unit, stitch.symmetry === 'glide', count);
const row = (stitch: Stitch, count: number, values: Values = {}): LaidLeg[] =>
  rowOf(stitch, stitch.build(values), count);
const named = (legs: readonly LaidLeg[], ...names: string[]) =>
  legs.filter((leg) => names.includes(leg.name.replace(/\[\d+\]$/, '')));
type Spot = readonly [number, number];
const first = (leg: LaidLeg): Spot => leg.xy[0];
const last = (leg: LaidLeg): Spot => leg.xy[leg.xy.length - 1];
const apart = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const lengthOf = (leg: LaidLeg): number => apart(first(leg), last(leg));

/** Where two lines of thread cross between their ends, or null; straight legs only. */
function crossing(a: LaidLeg, b: LaidLeg): Spot | null {
  const [p, q, r, s] = [first(a), last(a), first(b), last(b)];
  const d = [q[0] - p[0], q[1] - p[1]];
  const e = [s[0] - r[0], s[1] - r[1]];
  const det = d[0] * e[1] - d[1] * e[0];
  if (Math.abs(det) < 1e-12) return null;
  const t = ((r[0] - p[0]) * e[1] - (r[1] - p[1]) * e[0]) / det;
  const w = ((r[0] - p[0]) * d[1] - (r[1] - p[1]) * d[0]) / det;
  const inside = (x: number) => x > 1e-9 && x < 1 - 1e-9;
  return inside(t) && inside(w) ? [p[0] + t * d[0], p[1] + t * d[1]] : null;
}

/** Angle of a leg against the line, in degrees from 0 to 180. */
const slantOf = (leg: LaidLeg): number => {
  const [[au, av], [bu, bv]] = [first(leg), last(leg)];
  return ((((Math.atan2(bv - av, bu - au) * 180) / Math.PI) % 180) + 180) % 180;
};

describe('closed herringbone', () => {
  const closed = stitchNamed('closed-herringbone');

  // Christie, Embroidery and Tapestry Weaving, 1912, figure 63: two lines, "commencing each one at the point where the last
  // one ended", so that every hole inside the row is used twice. Day and Buckle, Art in Needlework, 1900, To work F.
  test('begins each stroke in the very hole where the last one on that line ended', () => {
    const strokes = named(row(closed, 9), 'stroke');
    for (let k = 3; k < strokes.length; k++) expect(strokes[k].from).toBe(strokes[k - 3].to);
    always(closed, (unit, { width }) => {
      for (const leg of rowOf(closed, unit, 5)) {
        expect(Math.abs(first(leg)[1])).toBeCloseTo(width / 2, 9);
        expect(Math.abs(last(leg)[1])).toBeCloseTo(width / 2, 9);
      }
    });
  });

  // Day and Buckle, illustration 21, on F: the back "looks like a double row of back-stitching".
  test('shows two rows of back stitch behind the cloth, without a gap', () => {
    always(closed, (unit) => {
      const pickUps = named(rowOf(closed, unit, 8), 'pick-up');
      for (let k = 2; k < pickUps.length; k++) {
        expect(apart(last(pickUps[k]), first(pickUps[k - 2]))).toBeCloseTo(0, 9);
        expect(first(pickUps[k])[1]).toBe(first(pickUps[k - 2])[1]);
      }
    });
  });

  // To work F, arithmetic from it: every stroke is crossed at a third and at two thirds of the height.
  test('crosses its neighbors at a third and two thirds of the height', () => {
    always(closed, (unit, { width }) => {
      const strokes = named(rowOf(closed, unit, 6), 'stroke');
      for (let k = 1; k < strokes.length; k++) {
        expect(Math.abs(crossing(strokes[k - 1], strokes[k])![1])).toBeCloseTo(width / 6, 9);
      }
    });
  });
});

describe('double herringbone', () => {
  const double = stitchNamed('double-herringbone');
  const strokes = {
    first: ['first up', 'first down'],
    second: ['second down', 'second up to the first', 'second up from the first'],
  };

  // Day and Buckle, illustration 20, To work B: "longer and more slanting stitches, so that there is room between them for
  // a second row in another colour".
  test('is two herringbones in two threads, the second half a repeat further on', () => {
    expect(double.threads).toHaveLength(2);
    always(double, (unit) => {
      const legs = rowOf(double, unit, 3);
      const inThread = (k: number) => legs.filter(({ thread, kind }) => thread === k && kind !== 'under');
      expect(new Set(inThread(0).map(({ name }) => name))).toEqual(new Set(strokes.first));
      expect(new Set(inThread(1).map(({ name }) => name))).toEqual(new Set(strokes.second));
      const up = legNamed(unit, 'first up');
      const upToo = legNamed(unit, 'second up to the first');
      expect(upToo.path[0] - up.path[0]).toBeCloseTo(unit.length / 2, 9);
      expect(upToo.path[1]).toBe(up.path[1]);
    });
  });

  test('is more slanting than herringbone', () => {
    const plain = named(row(stitchNamed('herringbone'), 2), 'stroke')[0];
    const long = named(row(double, 2), 'first up')[0];
    expect(lengthOf(long)).toBeGreaterThan(lengthOf(plain));
    expect(slantOf(long)).toBeLessThan(slantOf(plain));
  });

  // The same: "the two colours being, of course, properly interlaced".
  test('laces the second color over the first and under it in turn', () => {
    always(double, (unit) => {
      const legs = rowOf(double, unit, 5);
      const over = named(legs, 'second down');
      const rising = named(legs, 'second up to the first');
      const dives = named(legs, 'beneath the first');
      over.forEach((stroke, k) => {
        const at = crossing(named(legs, 'first up')[k], stroke)!;
        expect(at[1]).toBeCloseTo(0, 9);
        const down = named(legs, 'first down')[k];
        expect(crossing(down, rising[k])).toBeNull();
        const under = crossing(down, dives[k])!;
        expect(under[0] - at[0]).toBeCloseTo(unit.length / 2, 9);
        expect(dives[k].kind).toBe('under');
        expect(dives[k].from).toBe(rising[k].to);
      });
    });
  });

  test('keeps the holes of the two rows apart on both lines', () => {
    always(double, (unit) => {
      const ends = rowOf(double, unit, 4)
        .filter(({ kind, name }) => kind !== 'under' && !name.endsWith('the first'))
        .flatMap((leg) => [first(leg), last(leg)].map((spot) => ({ spot, thread: leg.thread })));
      for (const a of ends) {
        for (const b of ends) if (a.thread !== b.thread) expect(apart(a.spot, b.spot)).toBeGreaterThan(0.4);
      }
    });
  });
});

describe.each(['tied-herringbone', 'laced-herringbone'])('%s', (name) => {
  const stitch = stitchNamed(name);

  // Day and Buckle, illustrations 32 and 33: the first thread is herringbone worked into the stuff, another is put on its surface.
  test('stands on a herringbone of another thread, every crossing of it complete', () => {
    expect(stitch.threads).toHaveLength(2);
    always(stitch, (unit) => {
      const legs = rowOf(stitch, unit, 6);
      const strokes = named(legs, 'stroke');
      expect(strokes).toHaveLength(7);
      const seat = unit.seats.find((spot) => spot.name === 'crossing')!;
      for (let k = 1; k < strokes.length; k++) {
        const at = crossing(strokes[k - 1], strokes[k])!;
        expect(at[0]).toBeCloseTo(seat.u + (k - 1) * unit.length, 9);
        expect(Math.abs(at[1])).toBeCloseTo(Math.abs(seat.v), 9);
      }
    });
  });
});

describe('tied herringbone', () => {
  const tied = stitchNamed('tied-herringbone');

  // Common practice: coral knots in a second thread, one on each crossing, the thread between them led along the strokes.
  test('has a knot of the second thread on every crossing, and leads that thread along the strokes', () => {
    always(tied, (unit) => {
      const legs = rowOf(tied, unit, 6);
      const strokes = named(legs, 'stroke');
      const knots = named(legs, 'tie');
      expect(knots.map(({ thread }) => thread)).toEqual(knots.map(() => 1));
      knots.forEach((knot, k) => {
        expect(apart(first(knot), crossing(strokes[k], strokes[k + 1])!)).toBeCloseTo(0, 9);
        expect(knot.size).toBeGreaterThanOrEqual(1.2);
      });
      named(legs, 'lead').forEach((lead, k) => {
        expect(slantOf(lead)).toBeCloseTo(slantOf(strokes[k]), 6);
        expect(lead.to).toBe(knots[k].from);
      });
    });
  });
});

describe('laced herringbone', () => {
  const laced = stitchNamed('laced-herringbone');
  const around = ['over the next stroke', 'beneath the stroke', 'over the next again', 'beneath again', 'on'];

  // Day and Buckle, illustration 32, F and H (plate seen): a darker silk interlaced on the surface. That it goes once round
  // every crossing is common practice.
  test('winds its lacing once round every crossing, at an even distance', () => {
    always(laced, (unit) => {
      const legs = rowOf(laced, unit, 3);
      const strokes = named(legs, 'stroke');
      for (let k = 0; k < 3; k++) {
        const [u, v] = crossing(strokes[k], strokes[k + 1])!;
        const ring = named(legs, ...around)
          .filter((leg) => leg.unit === k)
          .flatMap(({ xy }) => xy);
        let turned = 0;
        for (let i = 1; i < ring.length; i++) {
          const [a, b] = [ring[i - 1], ring[i]].map(([x, y]) => Math.atan2(y - v, x - u));
          turned += Math.atan2(Math.sin(b - a), Math.cos(b - a));
        }
        // From the stroke on one side of the crossing to the next on the other, with a whole turn between.
        expect(Math.abs(turned)).toBeGreaterThan(2 * Math.PI);
        expect(Math.abs(turned)).toBeLessThan(4 * Math.PI);
        const ends = named(legs, 'beneath the stroke', 'beneath again')
          .filter((leg) => leg.unit === k)
          .flatMap((leg) => [first(leg), last(leg)].map((spot) => apart(spot, [u, v])));
        for (const far of ends) expect(far).toBeCloseTo(ends[0], 9);
      }
    });
  });

  // Common practice: a lacing goes over one thread and under the next.
  test('dives beneath the two arms of the earlier stroke and lies over those of the later one', () => {
    always(laced, (unit) => {
      const legs = rowOf(laced, unit, 3);
      const strokes = named(legs, 'stroke');
      for (let k = 0; k < 3; k++) {
        const dives = named(legs, 'beneath the stroke', 'beneath again').filter((leg) => leg.unit === k);
        expect(dives.map(({ kind }) => kind)).toEqual(['under', 'under']);
        for (const dive of dives) {
          expect(crossing(dive, strokes[k])).not.toBeNull();
          expect(crossing(dive, strokes[k + 1])).toBeNull();
        }
      }
    });
  });
});

describe('double chevron', () => {
  const double = stitchNamed('double-chevron');

  // Textile Research Centre, Leiden, TRC Needles, Chevron Stitch (citing Mary Thomas, 1934), for each row: the diagonal goes
  // from the center of a bar to the center of the next bar on the other line. Common practice: two rows half a repeat apart.
  test('is two chevrons whose diagonals cross in the seam and whose bars take turns on both lines', () => {
    always(double, (unit, { width }) => {
      const legs = rowOf(double, unit, 6);
      for (const which of ['first', 'second']) {
        const bars = named(legs, `${which} bar`);
        named(legs, `${which} diagonal`).forEach((diagonal, k) => {
          expect(first(diagonal)[0]).toBeCloseTo((first(bars[k])[0] + last(bars[k])[0]) / 2, 9);
          expect(last(diagonal)[0]).toBeCloseTo((first(bars[k + 1])[0] + last(bars[k + 1])[0]) / 2, 9);
          expect(Math.abs(first(bars[k])[1])).toBeCloseTo(width / 2, 9);
        });
      }
      named(legs, 'first diagonal').forEach((diagonal, k) => {
        expect(crossing(diagonal, named(legs, 'second diagonal')[k])![1]).toBeCloseTo(0, 9);
      });
      const low = named(legs, 'first bar', 'second bar')
        .filter((bar) => first(bar)[1] < 0)
        .sort((a, b) => first(a)[0] - first(b)[0]);
      for (let k = 1; k < low.length; k++) {
        expect(low[k].thread).not.toBe(low[k - 1].thread);
        expect(first(low[k])[0]).toBeGreaterThan(last(low[k - 1])[0]);
      }
    });
  });
});

describe('fishbone', () => {
  const fishbone = stitchNamed('fishbone');

  // Christie, figure 68 (figure seen): three lines, two outer and a middle one. "Trace three parallel lines upon the material".
  test('goes in on the outer lines in turn and comes out just beyond the middle one', () => {
    always(fishbone, (unit, { width }) => {
      const strokes = named(rowOf(fishbone, unit, 6), 'stroke');
      strokes.forEach((stroke, k) => {
        const side = k % 2 === 0 ? 1 : -1;
        expect(last(stroke)[1]).toBeCloseTo((side * width) / 2, 9);
        expect(first(stroke)[1] * side).toBeLessThan(0);
        expect(Math.abs(first(stroke)[1])).toBeLessThanOrEqual(width * 0.3 + 1e-9);
      });
    });
  });

  // Day and Buckle, illustration 20, To work E: "a sort of spine up the centre where the threads cross".
  test('crosses each stroke with the one before, near the middle line', () => {
    always(fishbone, (unit, { width, repeat, slant }) => {
      // Worked far apart and narrow, strokes that slant so would leave the spine open.
      if (0.275 * repeat * Math.tan((slant * Math.PI) / 180) > 0.3 * width) return;
      const strokes = named(rowOf(fishbone, unit, 6), 'stroke');
      for (let k = 1; k < strokes.length; k++) {
        expect(Math.abs(crossing(strokes[k - 1], strokes[k])![1])).toBeLessThan(0.28 * width);
      }
    });
  });

  // Christie, figure 68, measured by eye on the figure: the strokes of the two sides stand at a right angle.
  test('usually slants its strokes so that the two sides stand at a right angle', () => {
    const [a, b] = named(row(fishbone, 2), 'stroke');
    expect(Math.abs(slantOf(a) - slantOf(b))).toBeCloseTo(90, 6);
  });
});

describe('stacked fly', () => {
  const stacked = stitchNamed('stacked-fly');

  // Royal School of Needlework, Stitch Bank, Fly stitch: an open loop held by an anchoring stitch; in a vertical row each
  // is anchored in the next (indian-embroidery.com). Common practice: in stacks with a longer stalk between.
  test.each([2, 3, 4])('has %i even V in a stack, anchored in each other, then a longer stalk', (stack) => {
    const unit = stacked.build({ stack });
    const legs = rowOf(stacked, unit, 2).filter((leg) => leg.unit === 0);
    const arms = (hand: string) => named(legs, `${hand} arm`, `last ${hand} arm`);
    expect(arms('left')).toHaveLength(stack);
    const anchors = [...named(legs, 'anchor'), ...named(legs, 'stalk')];
    arms('left').forEach((left, k) => {
      const right = arms('right')[k];
      expect(first(left)[0]).toBeCloseTo(last(right)[0], 9);
      expect(first(left)[1]).toBeCloseTo(-last(right)[1], 9);
      expect(left.to).toBe(right.from);
      expect(anchors[k].from).toBe(left.to);
      if (k > 0) {
        expect(anchors[k - 1].to).toBe(left.to);
        expect(first(left)[1]).toBeLessThan(first(arms('left')[k - 1])[1]);
      }
    });
    for (const anchor of anchors.slice(0, -1))
      expect(lengthOf(anchors.at(-1)!)).toBeGreaterThan(1.5 * lengthOf(anchor));
  });
});

describe('fern', () => {
  const fern = stitchNamed('fern');

  // Royal School of Needlework, Stitch Bank, Fern stitch: three straight stitches share one base hole; the outer two are
  // of one length, angled to either side of the middle one.
  test('is three straight stitches into one hole, the outer two alike', () => {
    always(fern, (unit, { spread }) => {
      const legs = rowOf(fern, unit, 2).filter((leg) => leg.unit === 0 && leg.kind !== 'under');
      expect(legs.map(({ kind }) => kind)).toEqual(['straight', 'straight', 'straight']);
      expect(new Set(legs.map(({ to }) => to)).size).toBe(1);
      const [middle, left, right] = legs;
      expect(lengthOf(left)).toBeCloseTo(lengthOf(right), 9);
      expect(slantOf(middle)).toBeCloseTo(0, 9);
      expect(slantOf(right)).toBeCloseTo(spread, 6);
      expect(slantOf(left)).toBeCloseTo(180 - spread, 6);
    });
  });

  // diaryofanorthernbelle.com (modern tutorial): three parallel lines equally far apart; the next group begins at the base of the last.
  test('stands on three even lines, each group beginning at the base of the last', () => {
    always(fern, (unit, { width }) => {
      const legs = rowOf(fern, unit, 4).filter(({ kind }) => kind !== 'under');
      const lines = new Set(legs.flatMap((leg) => [first(leg)[1], last(leg)[1]]));
      expect([...lines].sort((a, b) => a - b)).toEqual([-width / 2, 0, width / 2]);
    });
    const middles = named(row(fern, 4), 'middle');
    for (let k = 1; k < 4; k++) expect(middles[k].from).toBe(middles[k - 1].to);
  });
});

describe('wheatear', () => {
  const wheatear = stitchNamed('wheatear');

  // Modern tutorials (hopebroidery.com, kerrykatiecakes2.blogspot.com, artfabrik.com): two straight strokes in a V into one
  // hole, then a loop from below round them and back to its own hole, where the next V ends.
  test('is a V into one hole and a loop round it, from the hole in which the next V ends', () => {
    const legs = row(wheatear, 4);
    const loops = named(legs, 'ear').filter((_, half) => half % 2 === 0);
    for (let k = 0; k < 4; k++) {
      const [left, right] = named(legs, 'left bristle', 'right bristle').filter((leg) => leg.unit === k);
      expect(left.to).toBe(right.to);
      expect(loops[k].to).toBe(left.to);
      if (k > 0) expect(loops[k - 1].from).toBe(left.to);
    }
  });

  test('makes three new holes a repeat: two tips and the foot of the loop', () => {
    const legs = row(wheatear, 5);
    const holes = (count: number) =>
      new Set(legs.filter(({ unit }) => unit < count).flatMap(({ from, to }) => [from, to])).size;
    expect(holes(5) - holes(4)).toBe(3);
  });

  // Common practice: a chain link is at least 3 by 1.2 mm.
  test('has loops large enough to be seen as loops', () => {
    always(wheatear, (unit) => {
      const halves = unit.legs.filter(({ name }) => name === 'ear');
      const across = halves.flatMap(({ path }) => [...path].filter((_, i) => i % 2 === 1));
      const [[foot], [tip]] = endsOf(halves[0]);
      expect(foot - tip).toBeGreaterThanOrEqual(3);
      expect(Math.max(...across) - Math.min(...across)).toBeGreaterThan(1.2);
    });
  });
});

describe('detached wheatear', () => {
  const single = stitchNamed('detached-wheatear');

  // The same tutorials for one of them; that it stands on the seam by itself is common practice.
  test('is one link with a V at its tip, its foot in the seam, stiff about that foot', () => {
    always(single, (unit, { width }) => {
      const link = unit.legs.filter(({ name }) => name === 'link');
      const horns = unit.legs.filter(({ name }) => name.endsWith('horn'));
      expect(nodeAt(unit, link[0].from)[1]).toBe(0);
      for (const horn of horns) expect(horn.to).toBe(link[0].to);
      const tips = horns.map((horn) => nodeAt(unit, horn.from));
      expect(tips.map(([, v]) => v)).toEqual([width, width]);
      for (const leg of [...link, ...horns]) {
        expect(leg.bends).toBe(false);
        expect(leg.anchor).toBe(link[0].from);
      }
    });
  });

  test('does not touch its neighbors', () => {
    always(single, (unit) => {
      const along = unit.legs
        .filter(({ kind }) => kind !== 'under')
        .flatMap(({ path }) => [...path].filter((_, i) => i % 2 === 0));
      expect(Math.max(...along) - Math.min(...along)).toBeLessThan(unit.length - 1);
    });
  });
});

// Common practice: two straight stitches of one length meet in a point, usually at about a right angle.
test('arrowheads are pairs of even straight stitches that meet about square', () => {
  const arrowhead = stitchNamed('arrowhead');
  always(arrowhead, (unit) => {
    const [rising, falling] = named(rowOf(arrowhead, unit, 1), 'rising', 'falling');
    expect(rising.to).toBe(falling.from);
    expect(lengthOf(rising)).toBeCloseTo(lengthOf(falling), 9);
  });
  const [rising, falling] = named(row(arrowhead, 1), 'rising', 'falling');
  expect(Math.abs(slantOf(falling) - slantOf(rising) - 90)).toBeLessThan(12);
});

describe('cross', () => {
  const cross = stitchNamed('cross');

  // Text-Book on Domestic Art (Ingalls, 1911 from memory): "if each stitch joins the preceding one, it becomes the cross
  // stitch".
  test('shares its holes with the crosses beside it', () => {
    const legs = row(cross, 4);
    const [rising, falling] = [named(legs, 'rising'), named(legs, 'falling')];
    for (let k = 1; k < 4; k++) {
      expect(rising[k].from).toBe(falling[k - 1].from);
      expect(falling[k].to).toBe(rising[k - 1].to);
    }
  });

  // Common practice: the upper strokes of all crosses lie in one direction.
  test('crosses in its middle, and laps the same way all along', () => {
    always(cross, (unit) => {
      const legs = rowOf(cross, unit, 4);
      named(legs, 'rising').forEach((rising, k) => {
        const falling = named(legs, 'falling')[k];
        const at = crossing(rising, falling)!;
        expect(at[1]).toBeCloseTo(0, 9);
        expect(at[0]).toBeCloseTo((k + 0.5) * unit.length, 9);
        expect(legs.indexOf(falling)).toBeGreaterThan(legs.indexOf(rising));
      });
    });
  });
});

describe('star stitch', () => {
  const star = stitchNamed('star-stitch');
  const strokes = (unit: Unit) => rowOf(star, unit, 1).filter(({ kind }) => kind === 'straight');

  // Dillmont, Encyclopedia of Needlework, figure 273: a slanting cross, then "another cross stitch, standing upright".
  test('lays an upright cross over a slanting one, four strokes that make eight rays', () => {
    const [a, b, c, d] = strokes(star.build({})).map(slantOf);
    expect([a, b, c, d]).toEqual([
      expect.closeTo(45, 6),
      expect.closeTo(135, 6),
      expect.closeTo(90, 6),
      expect.closeTo(0, 6),
    ]);
  });

  test('crosses all four strokes in one point, where there is no hole', () => {
    always(star, (unit) => {
      const four = strokes(unit);
      const center = unit.seats.find(({ name }) => name === 'center')!;
      const at = four.flatMap((a, i) => four.slice(i + 1).map((b) => crossing(a, b)!));
      expect(at).toHaveLength(6);
      for (const spot of at) expect(apart(spot, [center.u, center.v])).toBeCloseTo(0, 9);
      const ends = new Set(unit.legs.flatMap(({ from, to }) => [from, to]));
      for (const node of ends) {
        expect(apart(nodeAt(unit, node), [center.u, center.v])).toBeGreaterThan(0.5);
      }
    });
  });

  // Figure 273: over four threads each way, so that the slanting cross reaches the corners of the square.
  test('can be worked over the same number of threads each way, as on canvas', () => {
    const [rising, , upright] = strokes(star.build({ slanting: 1.41 }));
    expect(last(rising)[1] / last(upright)[1]).toBeCloseTo(1, 2);
  });
});

// Common practice: a long upright, over it a cross that is shorter, narrower above and wider below.
test('ermine covers a long upright with a shorter cross, wider below', () => {
  const ermine = stitchNamed('ermine');
  always(ermine, (unit) => {
    const legs = rowOf(ermine, unit, 1);
    const [upright, rising, falling] = named(legs, 'upright', 'rising', 'falling');
    expect(legs.indexOf(upright)).toBeLessThan(legs.indexOf(rising));
    const tall = (leg: LaidLeg) => Math.abs(last(leg)[1] - first(leg)[1]);
    expect(tall(rising) / tall(upright)).toBeCloseTo(2 / 3, 1);
    expect(Math.max(last(rising)[1], last(falling)[1])).toBeLessThan(last(upright)[1]);
    expect(Math.min(first(rising)[1], first(falling)[1])).toBeGreaterThan(first(upright)[1]);
    const below = first(falling)[0] - first(rising)[0];
    const above = last(rising)[0] - last(falling)[0];
    expect(above).toBeGreaterThan(0);
    expect(below).toBeGreaterThan(1.3 * above);
    expect(crossing(rising, falling)![0]).toBeCloseTo(first(upright)[0], 9);
  });
});

// Common practice: three or more uprights are drawn together in the middle by a short stitch across them.
test('a sheaf is drawn in at its waist by a stitch that lies over all its stalks', () => {
  const sheaf = stitchNamed('sheaf');
  always(sheaf, (unit, { stalks: count }) => {
    const legs = rowOf(sheaf, unit, 1);
    const stalks = named(legs, 'stalk');
    expect(stalks).toHaveLength(count);
    const waist = stalks.map(({ xy }) => xy[Math.floor(xy.length / 2)][0]);
    const wide = (us: number[]) => Math.max(...us) - Math.min(...us);
    expect(wide(waist)).toBeLessThan(0.75 * wide(stalks.map((stalk) => first(stalk)[0])));
    expect(stalks.map((stalk) => last(stalk)[0])).toEqual(
      stalks.map((stalk) => expect.closeTo(first(stalk)[0], 9)),
    );
    const [tie] = named(legs, 'tie');
    expect(legs.indexOf(tie)).toBeGreaterThan(legs.indexOf(stalks.at(-1)!));
    expect([first(tie)[1], last(tie)[1]]).toEqual([0, 0]);
    expect(first(tie)[0]).toBeLessThan(Math.min(...waist));
    expect(last(tie)[0]).toBeGreaterThan(Math.max(...waist));
    expect(lengthOf(tie)).toBeLessThan(3);
  });
});

// Common practice: a French knot with its tail as a straight stitch.
test('pistils are straight stalks from one hole in the seam, each with a knot at its end, to either hand in turn', () => {
  const pistil = stitchNamed('pistil');
  always(pistil, (unit, { stalks: count, knot: size }) => {
    const legs = rowOf(pistil, unit, 2);
    const stalks = named(legs, 'stalk').filter((leg) => leg.unit === 0);
    const knots = named(legs, 'knot').filter((leg) => leg.unit === 0);
    expect([stalks.length, knots.length]).toEqual([count, count]);
    expect(new Set(stalks.map(({ from }) => from)).size).toBe(1);
    expect(first(stalks[0])[1]).toBe(0);
    stalks.forEach((stalk, k) => {
      expect(stalk.to).toBe(knots[k].from);
      expect(knots[k].size).toBe(size);
      if (k > 0) expect(apart(last(stalk), last(stalks[k - 1]))).toBeGreaterThan(size);
    });
    for (const leg of named(legs, 'knot')) expect(first(leg)[1] > 0).toBe(leg.unit === 0);
  });
});

describe('lazy daisy clusters', () => {
  const clusters = stitchNamed('lazy-daisy-clusters');

  // Christie, figure 29 (figure seen): five petals, each one chain stitch; no source fixes the number in general.
  test('usually have five petals', () => {
    expect(clusters.parameters.find(({ name }) => name === 'petals')!.default).toBe(5);
  });

  // School Sewing, paragraph 132, figure 34: from the center out, the loop held by a short stitch just outside its tip.
  test.each([3, 4, 5, 6, 7, 8])(
    'of %i stand evenly about a heart in the seam, each petal held at its tip',
    (petals) => {
      const unit = clusters.build({ petals });
      const center = unit.seats.find(({ name }) => name === 'heart')!;
      expect(center.v).toBe(0);
      const loops = unit.legs.filter(({ kind }) => kind === 'loop').filter((_, half) => half % 2 === 0);
      const holds = unit.legs.filter(({ name }) => name.startsWith('hold'));
      expect([loops.length, holds.length]).toEqual([petals, petals]);
      const about = (node: number): Spot => {
        const [u, v] = nodeAt(unit, node);
        return [Math.hypot(u - center.u, v - center.v), (Math.atan2(u - center.u, v) * 180) / Math.PI];
      };
      loops.forEach((loop, k) => {
        const [[near], [far, angle], [end]] = [about(loop.from), about(loop.to), about(holds[k].to)];
        expect(near).toBeLessThan(0.6);
        expect(holds[k].from).toBe(loop.to);
        expect(far - near).toBeGreaterThan(3);
        expect(end - far).toBeGreaterThanOrEqual(1 - 1e-9);
        expect(end - far).toBeLessThanOrEqual(1.5 + 1e-9);
        expect(Math.cos(((angle - (360 * k) / petals) * Math.PI) / 180)).toBeCloseTo(1, 9);
      });
    },
  );

  test('leave room between one cluster and the next', () => {
    always(clusters, (unit) => {
      const along = unit.legs
        .filter(({ kind }) => kind === 'straight')
        .flatMap(({ path }) => [path[0], path[path.length - 2]]);
      expect(Math.max(...along) - Math.min(...along)).toBeLessThan(unit.length - 0.4);
    });
  });
});
