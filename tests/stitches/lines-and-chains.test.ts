import { describe, expect, test } from 'vitest';
import { mirrored } from '../../src/stitches/symmetry.js';
import { endsOf, legNamed, nodeAt, stitchNamed } from './dictionary.js';
import { layRow } from './lay-row.js';
import { always, crossesSeam, first, last, legsNamed, row } from './rows.js';

const near = (value: number) => expect.closeTo(value, 9);
/** Steps from each number to the next. */
const steps = (values: readonly number[]) => values.slice(1).map((value, i) => value - values[i]);
const apart = ([au, av]: readonly number[], [bu, bv]: readonly number[]) => Math.hypot(bu - au, bv - av);
const INCH = 25.4;

describe('running', () => {
  const running = stitchNamed('running');

  // Dillmont, Encyclopedia of Needlework, figure 4: "taking up three or four threads at a time", at regular intervals.
  test('is dashes of one length, one interval apart, in one line', () => {
    always(running, (unit) => {
      const dashes = legsNamed(layRow(unit, false, 5), 'stitch');
      for (const dash of dashes) expect([first(dash)[1], last(dash)[1]]).toEqual([0, 0]);
      const long = dashes.map((dash) => last(dash)[0] - first(dash)[0]);
      const gaps = dashes.slice(1).map((dash, i) => first(dash)[0] - last(dashes[i])[0]);
      for (const dash of long) expect(dash).toBeCloseTo(long[0], 9);
      for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0], 9);
      expect(Math.min(...gaps)).toBeGreaterThan(0.5);
    });
  });

  // Common practice: a row begins and ends with a dash; the thread behind the gaps is thinner than a dash.
  test('begins and ends with a dash, and shows thin thread in the gaps alone', () => {
    const legs = row(running, 4);
    expect(legsNamed(legs, 'stitch')).toHaveLength(5);
    expect(Math.max(...legs.flatMap(({ xy }) => xy.map(([u]) => u)))).toBe(
      last(legsNamed(legs, 'stitch')[4])[0],
    );
    for (const leg of running.build({}).legs) expect(leg.share === 0).toBe(leg.name === 'gap');
  });
});

describe('back', () => {
  const back = stitchNamed('back');

  // Christie, Embroidery and Tapestry Weaving, 1912, figure 47: "Each stitch, it will be seen, commences at the point where
  // the last one finished." Dillmont, figure 6: exactly in the hole, stitches of equal length.
  test('is stitches of one length, each from the hole of the one before', () => {
    always(back, (unit, { repeat }) => {
      const stitches = legsNamed(layRow(unit, false, 5), 'stitch');
      for (let i = 1; i < 5; i++) expect(stitches[i].from).toBe(stitches[i - 1].to);
      for (const stitch of stitches) expect(last(stitch)[0] - first(stitch)[0]).toBeCloseTo(repeat, 9);
    });
  });
});

describe('stem', () => {
  const stem = stitchNamed('stem');

  // Dillmont, figure 173: "so that each stitch reaches halfway back to the last".
  test('comes out halfway back along the stitch before', () => {
    always(stem, (unit) => {
      const stitches = legsNamed(layRow(unit, false, 4), 'stitch');
      for (let i = 1; i < 4; i++) {
        const before = stitches[i - 1];
        expect(first(stitches[i])[0]).toBeCloseTo((first(before)[0] + last(before)[0]) / 2, 9);
      }
    });
  });

  // Dillmont, figure 172: "inserted above the run thread, and brought out underneath it"; Christie, figure 43: the thread
  // is kept to the same side throughout.
  test('goes in on one side of the line and comes out on the other, always the same', () => {
    always(stem, (unit) => {
      for (const stitch of legsNamed(layRow(unit, false, 4), 'stitch')) {
        expect(first(stitch)[1]).toBeLessThan(0);
        expect(last(stitch)[1]).toBeGreaterThan(0);
        expect(last(stitch)[0]).toBeGreaterThan(first(stitch)[0]);
      }
    });
  });

  // Dillmont, figure 173: it slopes over one or two threads in height to five or six in length.
  test('usually slopes by one or two in five or six', () => {
    const [from, to] = endsOf(legNamed(stem.build({}), 'stitch'));
    const slope = (to[1] - from[1]) / (to[0] - from[0]);
    expect(slope).toBeGreaterThan(1 / 6);
    expect(slope).toBeLessThan(2 / 5);
  });

  // Day and Buckle, Art in Needlework, 1900, To work B: outline differs from it only in the side of the thread.
  test('in the other hand is outline stitch: sloping the other way', () => {
    const [from, to] = endsOf(legNamed(mirrored(stem.build({})), 'stitch'));
    expect(from[1]).toBeGreaterThan(to[1]);
  });
});

describe('split', () => {
  const split = stitchNamed('split');

  // Christie, figure 38: forward, then out nearer the start, through the working thread.
  test('comes out between the strands of the stitch before, nearer its end than its start', () => {
    always(split, (unit) => {
      const legs = layRow(unit, false, 3);
      const [left, next] = legsNamed(legs, 'left strand');
      const [right] = legsNamed(legs, 'right strand');
      const [u, v] = first(next);
      expect(last(left)[0] - u).toBeGreaterThan(0.3);
      expect(last(left)[0] - u).toBeLessThan(u - first(left)[0]);
      const at = (leg: typeof left) =>
        leg.xy.reduce((best, p) => (Math.abs(p[0] - u) < Math.abs(best[0] - u) ? p : best));
      expect(at(left)[1]).toBeGreaterThan(v + 0.2);
      expect(at(right)[1]).toBeLessThan(v - 0.2);
    });
  });
});

describe('chain', () => {
  const chain = stitchNamed('chain');

  // Dillmont, figure 287: "insert the needle at the same hole it came out of"; Christie, figure 25, and Day and Buckle,
  // illustration 17 A: the next link begins in the hole inside the last.
  test('returns with every link to its own hole, and begins the next in its end', () => {
    const links = legsNamed(row(chain, 5), 'link');
    for (let i = 0; i < links.length; i += 2) {
      const [out, home] = [links[i], links[i + 1]];
      expect([home.from, home.to]).toEqual([out.to, out.from]);
      if (i > 0) expect(out.from).toBe(links[i - 2].to);
    }
  });

  // Counted from the same passages: n links, n + 1 holes, and one more where the last link is tied down.
  test('uses one hole more than it has links, and one to tie down the last', () => {
    for (const count of [1, 4, 9]) {
      const holes = new Set(row(chain, count).flatMap(({ from, to }) => [from, to]));
      expect(holes.size).toBe(count + 2);
    }
  });

  // Christie, figure 25: links of about 1/16 inch; Day and Buckle: 1/4 inch. Only the coarser is seen as links in No. 40.
  test('can be worked in links of a quarter of an inch', () => {
    expect(chain.build({ repeat: INCH / 4 }).length).toBe(INCH / 4);
  });
});

describe('open chain', () => {
  const open = stitchNamed('open-chain');

  // Christie, figure 33: two lines, in exactly opposite, to alternate sides.
  test('has its holes in pairs exactly opposite on two lines', () => {
    always(open, (unit) => {
      const [left, right] = endsOf(legNamed(unit, 'rung'));
      expect(left[0]).toBe(right[0]);
      expect(left[1]).toBe(-right[1]);
      for (const name of ['left side', 'right side']) {
        const [a, b] = endsOf(legNamed(unit, name));
        expect(a[1]).toBe(b[1]);
      }
    });
  });

  // Christie, figure 33: lines 1/8 inch apart, steps of 1/8 inch.
  test('is usually square between rungs', () => {
    const unit = open.build({});
    const [left, right] = endsOf(legNamed(unit, 'rung'));
    expect(Math.abs(apart(left, right) / unit.length - 1)).toBeLessThan(0.05);
  });

  // Common practice: a loop is open, and is held at both corners where a row ends.
  test('bends its rungs onwards, and holds the last one at both ends', () => {
    always(open, (unit) => {
      const rung = legNamed(unit, 'rung');
      const [[u]] = endsOf(rung);
      for (let i = 2; i < rung.path.length - 2; i += 2) expect(rung.path[i]).toBeGreaterThan(u);
    });
    const holds = row(open, 3).slice(-2);
    expect(holds.map(({ name }) => name)).toEqual(['left hold', 'right hold']);
  });
});

describe('cable chain', () => {
  const cable = stitchNamed('cable-chain');

  // Christie, figure 36: a connecting stitch "one-sixteenth of an inch below the starting-point", then a link of 1/4 inch.
  test('has connecting stitches a quarter as long as its links', () => {
    const unit = cable.build({});
    const [a, b] = endsOf(legNamed(unit, 'connecting stitch'));
    const [c, d] = endsOf(legNamed(unit, 'left side'));
    expect(apart(a, b) / apart(c, d)).toBeCloseTo(1 / 4, 9);
  });

  test('works link and connecting stitch in turn, and ends with the stitch that holds the last link', () => {
    const legs = row(cable, 4).filter(({ name }) => name !== 'right side');
    legs.forEach((leg, i) => {
      expect(leg.name).toBe(i % 2 ? 'left side' : 'connecting stitch');
      if (i > 0) expect(leg.from).toBe(legs[i - 1].to);
    });
    expect(legs).toHaveLength(9);
  });
});

describe('feathered chain', () => {
  const feathered = stitchNamed('feathered-chain');

  // Day and Buckle, To work G G and its diagram: four lines; a link slanting down from line 1 to line 2, a straight stroke
  // to line 3; then from line 4.
  test('stands on four lines: links from an outer to the inner line beside it, strokes from inner to inner', () => {
    always(feathered, (unit, { width, stem }) => {
      const [outer, inner] = endsOf(unit.legs[0]);
      expect([Math.abs(outer[1]), Math.abs(inner[1])]).toEqual([near(width / 2), near((width / 2) * stem)]);
      expect(Math.sign(outer[1])).toBe(Math.sign(inner[1]));
      expect(inner[0]).toBeGreaterThan(outer[0]);
      const [from, to] = endsOf(legNamed(unit, 'stem'));
      expect(from).toEqual(inner);
      expect(to[1]).toBeCloseTo(-inner[1], 9);
    });
    const hands = legsNamed(row(feathered, 6), 'link')
      .filter((_, i) => i % 2 === 0)
      .map((link) => Math.sign(first(link)[1]));
    expect(hands).toEqual([1, -1, 1, -1, 1, -1]);
  });

  // The same: "bring it out on line 4 level with the point where you last brought it out".
  test('begins each link level with the end of the one before, and ends it where the stroke went in', () => {
    always(feathered, (unit) => {
      const legs = layRow(unit, true, 5);
      const links = legsNamed(legs, 'link').filter((_, i) => i % 2 === 0);
      const stems = legsNamed(legs, 'stem');
      for (let k = 1; k < 5; k++) {
        expect(first(links[k])[0]).toBeCloseTo(last(links[k - 1])[0], 9);
        expect(links[k].to).toBe(stems[k - 1].to);
      }
    });
  });
});

describe('zigzag chain', () => {
  const zigzag = stitchNamed('zigzag-chain');
  const links = (count: number, values = {}) =>
    legsNamed(row(zigzag, count, values), 'link').filter((_, i) => i % 2 === 0);

  // Christie, figure 30: two lines, "work the chain across from side to side at an angle of 45°".
  test('leads its links from line to line at about 45 degrees', () => {
    for (const link of links(6)) {
      const angle = Math.atan2(Math.abs(last(link)[1] - first(link)[1]), last(link)[0] - first(link)[0]);
      expect(Math.abs((angle * 180) / Math.PI - 45)).toBeLessThan(3);
      expect(last(link)[1]).toBe(-first(link)[1]);
    }
  });

  // Day and Buckle, illustration 17 E: left to right, then right to left, each started inside the last.
  test('changes sides with every link, each begun in the end of the last', () => {
    const row = links(6);
    for (let k = 1; k < 6; k++) {
      expect(row[k].from).toBe(row[k - 1].to);
      expect(Math.sign(last(row[k])[1])).toBe(-Math.sign(last(row[k - 1])[1]));
    }
  });

  // Christie, figure 30: a French knot "in each little triangular space left by working the stitch".
  test('has a seat for a knot in each triangle, clear of its links', () => {
    const unit = zigzag.build({});
    const seat = unit.seats.find(({ name }) => name === 'triangle')!;
    const clear = layRow(unit, true, 4).flatMap(({ xy }) =>
      xy.map(([u, v]) => apart([u, v], [seat.u + 2 * unit.length, seat.v])),
    );
    expect(Math.min(...clear)).toBeGreaterThan(0.9);
  });
});

// Common practice: whipping and lacing pass between the stitches of a row and the cloth; they lie over it beside them alone.
describe('a second thread', () => {
  test.each(['whipped-running', 'laced-running', 'whipped-chain'])(
    'makes %s a stitch of two colors',
    (name) => {
      const stitch = stitchNamed(name);
      expect(stitch.threads).toHaveLength(2);
      expect(new Set(stitch.build({}).legs.map(({ thread }) => thread))).toEqual(new Set([0, 1]));
    },
  );

  test('laces to one hand and the other in turn, and under every dash', () => {
    const laced = stitchNamed('laced-running');
    always(laced, (unit) => {
      const legs = layRow(unit, true, 6);
      const dashes = legsNamed(legs, 'stitch');
      legsNamed(legs, 'lace').forEach((lace, k) => {
        const [under, ...others] = crossesSeam(lace);
        expect(others).toEqual([]);
        expect(under).toBeGreaterThan(first(dashes[k])[0]);
        expect(under).toBeLessThan(last(dashes[k])[0]);
        expect(Math.sign(last(lace)[1])).toBe(k % 2 ? -1 : 1);
      });
    });
    // the dashes are sewn over it
    expect(laced.threads).toEqual(['lacing', 'running']);
  });

  test('whips running stitches from one side, over every gap', () => {
    const whipped = stitchNamed('whipped-running');
    always(whipped, (unit) => {
      const legs = layRow(unit, false, 6);
      const dashes = legsNamed(legs, 'stitch');
      legsNamed(legs, 'whip').forEach((whip, k) => {
        expect(first(whip)[1]).toBeLessThan(0);
        expect(last(whip)[1]).toBeGreaterThan(0);
        const [over] = crossesSeam(whip);
        expect(over).toBeGreaterThan(last(dashes[k])[0]);
        expect(over).toBeLessThan(first(dashes[k + 1])[0]);
      });
    });
    // the dashes are sewn over the whipping, which goes beneath them
    expect(whipped.threads).toEqual(['whipping', 'running']);
  });

  test('whips a chain from one side, over every joint', () => {
    const whipped = stitchNamed('whipped-chain');
    always(whipped, (unit) => {
      const legs = layRow(unit, false, 5);
      const joints = legsNamed(legs, 'link')
        .filter((_, i) => i % 2 === 0)
        .map((link) => last(link)[0]);
      const over = legsNamed(legs, 'whip').map((whip) => crossesSeam(whip));
      expect(over).toEqual(joints.map((joint) => [near(joint)]));
    });
    expect(whipped.threads).toEqual(['chain', 'whipping']);
  });
});

describe('knots on a line', () => {
  const coral = stitchNamed('coral');

  // Day and Buckle, illustration 29 C: in just above the laid thread, out just below it "in a line with where it went in".
  test('coral goes in above the thread and out below it, square to the line, at every knot', () => {
    always(coral, (unit) => {
      const [above, knot] = endsOf(legNamed(unit, 'upper half'));
      const [, below] = endsOf(legNamed(unit, 'lower half'));
      expect([above[0], below[0]]).toEqual([knot[0], knot[0]]);
      expect(above[1]).toBeGreaterThan(0);
      expect(below[1]).toBe(-above[1]);
      expect(nodeAt(unit, legNamed(unit, 'knot').from)).toEqual(knot);
    });
  });

  // Swanson and Macbeth, Educational Needlecraft, 1911 (year from memory), Lesson II: knots 1/4 to 1/2 inch apart.
  test('coral has its knots a quarter to half an inch apart, one at either end', () => {
    const usual = coral.build({}).length;
    expect(usual).toBeGreaterThanOrEqual(INCH / 4);
    expect(usual).toBeLessThanOrEqual(INCH / 2);
    expect(coral.build({ repeat: INCH / 2 }).length).toBe(INCH / 2);
    const knots = legsNamed(row(coral, 4), 'knot').map((knot) => first(knot)[0]);
    for (const step of steps(knots)) expect(step).toBeCloseTo(usual, 9);
    expect(knots).toHaveLength(5);
  });

  // Common practice: a knot is 1.3 to 1.8 mm across, and stands clear of the next.
  test.each(['coral', 'french-knots', 'knotted-chain'])('%s has knots of a good size', (name) => {
    always(stitchNamed(name), (unit) => {
      const { size } = legNamed(unit, 'knot');
      expect(size).toBeGreaterThanOrEqual(1.3 - 1e-9);
      expect(size).toBeLessThanOrEqual(1.8 + 1e-9);
      expect(unit.length - size).toBeGreaterThan(0.3);
    });
  });

  test('French knots lie in the seam, and nothing else is seen', () => {
    const unit = stitchNamed('french-knots').build({});
    const seen = unit.legs.filter(({ kind }) => kind !== 'under');
    expect(seen.map(({ kind }) => kind)).toEqual(['knot']);
    for (const leg of unit.legs) for (let i = 1; i < leg.path.length; i += 2) expect(leg.path[i]).toBe(0);
  });
});

describe('knotted chain', () => {
  const knotted = stitchNamed('knotted-chain');

  // Christie, figure 37 and its text: two lines; the thread starts "in the centre between the two lines".
  test('runs midway between two lines that its links touch, alike to both hands', () => {
    always(knotted, (unit, { width }) => {
      const [from, to] = endsOf(legNamed(unit, 'line'));
      expect([from[1], to[1]]).toEqual([0, 0]);
      expect(unit.reach.left).toBeCloseTo(unit.reach.right, 9);
      expect(unit.reach.left / (width / 2)).toBeGreaterThan(0.98);
    });
  });

  // The same figure: in every link the line that comes from the last one ends in a knot.
  test('has a knot in the eye of every link', () => {
    always(knotted, (unit) => {
      const [near, far] = endsOf(legNamed(unit, 'left side'));
      const [eye] = nodeAt(unit, legNamed(unit, 'knot').from);
      expect(eye).toBeCloseTo((near[0] + far[0]) / 2, 9);
      expect(endsOf(legNamed(unit, 'bar'))[1][0]).toBe(eye);
    });
  });
});

describe('bullion bars', () => {
  const bars = stitchNamed('bullion-bars');

  // Christie, figure 59: the needle spans the bar, which is straight; bars in a row across a seam: common practice.
  test('are straight coils of one length, half to either hand, side by side', () => {
    always(bars, (unit, { thick, slant }) => {
      const [middle, left] = endsOf(legNamed(unit, 'left half'));
      const [, right] = endsOf(legNamed(unit, 'right half'));
      expect([left[0] + right[0], left[1] + right[1]]).toEqual([near(2 * middle[0]), near(0)]);
      expect((Math.atan2(left[0] - middle[0], left[1]) * 180) / Math.PI).toBeCloseTo(slant, 9);
      // square to itself, a coil leaves room beside the next
      expect(unit.length * Math.cos((slant * Math.PI) / 180) - thick).toBeGreaterThan(0);
      expect(legNamed(unit, 'left half').kind).toBe('cord');
    });
  });
});

describe('Vandyke', () => {
  const vandyke = stitchNamed('vandyke');

  // Common practice: from the left edge to under the crossing of the stitch before, and down to the right edge.
  test('crosses its arms on the seam, and is looped round the crossing before', () => {
    always(vandyke, (unit) => {
      const legs = layRow(unit, false, 4);
      const left = legsNamed(legs, 'left arm');
      const right = legsNamed(legs, 'right arm');
      for (let k = 0; k < 4; k++) {
        const [a, ...more] = crossesSeam(left[k]);
        expect(more).toEqual([]);
        expect(crossesSeam(right[k])).toEqual([near(a)]);
        if (k > 0) expect(last(left[k])[0]).toBeLessThan(crossesSeam(left[k - 1])[0]);
        expect(first(left[k])[0]).toBe(last(right[k])[0]);
        expect(first(left[k])[1]).toBe(-last(right[k])[1]);
      }
    });
  });
});

describe('Roumanian', () => {
  const roumanian = stitchNamed('roumanian');

  // Christie, figure 71: "composed of one long stitch crossed by a short one in the centre", on two lines.
  test('lays one long stitch from line to line and crosses it in the center with a short one on top', () => {
    always(roumanian, (unit, { width }) => {
      const [left, right] = endsOf(legNamed(unit, 'long stitch'));
      expect([left, right]).toEqual([
        [0, near(width / 2)],
        [0, near(-width / 2)],
      ]);
      const [from, to] = endsOf(legNamed(unit, 'tie'));
      expect([from[0] + to[0], from[1] + to[1]]).toEqual([near(0), near(0)]);
      expect(from[0] * to[0]).toBeLessThan(0);
      const order = unit.legs.map(({ name }) => name);
      expect(order.indexOf('tie')).toBeGreaterThan(order.indexOf('long stitch'));
    });
    const unit = roumanian.build({});
    expect(apart(...endsOf(legNamed(unit, 'tie')))).toBeLessThan(
      apart(...endsOf(legNamed(unit, 'long stitch'))) / 3,
    );
  });
});

describe('braid', () => {
  const braid = stitchNamed('braid');

  // Christie, figure 35: out on the lower line exactly under the hole on the upper; steps as long as the lines are apart.
  test('takes the needle straight down, in steps about as long as it is wide', () => {
    always(braid, (unit) => {
      const [above, below] = endsOf(legNamed(unit, 'behind'));
      expect(above[0]).toBe(below[0]);
      expect(above[1]).toBeGreaterThan(below[1]);
    });
    const { length, reach } = braid.build({});
    expect(Math.abs(length / (reach.left + reach.right) - 1)).toBeLessThan(0.1);
  });

  // The same figure: every loop is twisted, and lies round the place where the next begins.
  test('crosses over itself, and is held below by the start of the next loop', () => {
    always(braid, (unit) => {
      const [loop, next] = legsNamed(layRow(unit, false, 2), 'twisted loop');
      const lowest = loop.xy.reduce((low, p) => (p[1] < low[1] ? p : low));
      expect(lowest[1]).toBeLessThan(first(next)[1]);
      expect(Math.abs(lowest[0] - first(next)[0])).toBeLessThan(unit.length / 5);
      expect(crossesSeam(loop).length).toBeGreaterThanOrEqual(3);
    });
  });
});
