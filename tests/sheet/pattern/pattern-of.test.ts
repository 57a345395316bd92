import { beforeAll, describe, expect, it } from 'vitest';
import { type Dressed, dress } from '../../../src/dress.js';
import type { Chain } from '../../../src/fit/fit.js';
import { boxesMeet, boxOf } from '../../../src/geometry/box.js';
import type { Points } from '../../../src/geometry/polyline.js';
import { ONE_MARK } from '../../../src/sheet/pattern/distinct-points.js';
import { likeByHand } from '../../../src/sheet/pattern/entries.js';
import { labelBox } from '../../../src/sheet/pattern/label-room.js';
import { mirrored } from '../../../src/sheet/pattern/mirrored.js';
import type { Pattern, PatternLine } from '../../../src/sheet/pattern/pattern.js';
import { patternOf } from '../../../src/sheet/pattern/pattern-of.js';
import { builtIn } from '../../stitches/dictionary.js';
import { richPanel } from './patterns.js';

let dressed: Dressed;
let pattern: Pattern;
beforeAll(async () => {
  dressed = await richPanel();
  pattern = patternOf(dressed, builtIn);
}, 60_000);

/** What a hand works of the fit, from its legs. */
const workedChains = ({ lines, ornaments }: Dressed): Chain[] => [
  ...lines.flatMap(({ fit }) =>
    fit.layers.flatMap(({ kind, chains }) => (kind === 'placement' ? [] : chains)),
  ),
  ...ornaments.map(({ chain }) => chain),
];
interface Spot {
  readonly x: number;
  readonly y: number;
}
const spots = (xy: Points): Spot[] =>
  Array.from({ length: xy.length / 2 }, (_, i) => ({ x: xy[2 * i], y: xy[2 * i + 1] }));
const apart = (a: Spot, b: Spot) => Math.hypot(a.x - b.x, a.y - b.y);
const nearest = (to: Spot, all: readonly Spot[]) => Math.min(...all.map((one) => apart(to, one)));

/** Ends of visible legs; where knots sit. */
function needlePoints(chains: readonly Chain[]): { ends: Spot[]; knots: Spot[] } {
  const ends: Spot[] = [];
  const knots: Spot[] = [];
  for (const { nodes, from, to, kind } of chains) {
    const node = (i: number) => ({ x: nodes[2 * i], y: nodes[2 * i + 1] });
    kind.forEach((what, leg) => {
      if (what === 'knot') knots.push(node(from[leg]));
      else if (what !== 'under') ends.push(node(from[leg]), node(to[leg]));
    });
  }
  return { ends, knots };
}

/** Along the visible legs, point by point. */
const alongLegs = (chains: readonly Chain[]): Spot[] =>
  chains.flatMap(({ kind, path, pathStart }) =>
    kind.flatMap((what, leg) =>
      what === 'under' || what === 'knot'
        ? []
        : spots(path.subarray(2 * pathStart[leg], 2 * pathStart[leg + 1])),
    ),
  );
const ofKind = (all: Pattern, kind: PatternLine['kind']) => all.lines.filter((line) => line.kind === kind);

function fromLine(spot: Spot, { points }: PatternLine): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [x0, y0, x1, y1] = points.subarray(i, i + 4);
    const square = (x1 - x0) ** 2 + (y1 - y0) ** 2;
    const t = square ? ((spot.x - x0) * (x1 - x0) + (spot.y - y0) * (y1 - y0)) / square : 0;
    const s = Math.min(1, Math.max(0, t));
    least = Math.min(least, Math.hypot(x0 + s * (x1 - x0) - spot.x, y0 + s * (y1 - y0) - spot.y));
  }
  return least;
}

describe('a pattern to work by hand', () => {
  it('marks every needle point of the fit once: by a dot, or by the ring of the knot that sits on it', () => {
    const { ends, knots } = needlePoints(workedChains(dressed));
    const dots = spots(pattern.dots);
    expect(knots.length).toBeGreaterThan(20);
    expect(ends.filter((end) => nearest(end, [...dots, ...knots]) > ONE_MARK)).toEqual([]);
    expect(dots.filter((dot) => nearest(dot, ends) > 0)).toEqual([]);
    expect(dots.filter((dot) => nearest(dot, knots) <= ONE_MARK)).toEqual([]);
    expect(dots.filter((dot, i) => nearest(dot, dots.slice(0, i)) <= ONE_MARK)).toEqual([]);
    const rings = ofKind(pattern, 'stitch')
      .map(({ points }) => boxOf([points]))
      .map(({ left, right, top, bottom }) => ({ x: (left + right) / 2, y: (top + bottom) / 2 }));
    expect(knots.filter((knot) => nearest(knot, rings) > 1e-9)).toEqual([]);
  });

  it('shows every visible leg, and no thread where none is seen', () => {
    const legs = alongLegs(workedChains(dressed));
    const drawn = ofKind(pattern, 'stitch');
    const some = (all: readonly Spot[]) => all.filter((_, i) => i % 13 === 0);
    // a petal is marked by its outline: its middle line lies half a petal, at most 1.5 mm, away from that
    expect(some(legs).filter((spot) => drawn.every((line) => fromLine(spot, line) > 1.5))).toEqual([]);
    const { knots } = needlePoints(workedChains(dressed));
    const seen = [...legs, ...knots];
    const stray = some(drawn.flatMap(({ points }) => spots(points))).filter(
      (spot) => nearest(spot, seen) > 2,
    );
    expect(stray).toEqual([]);
  });

  it('marks a leg once, however often the machine sews it', () => {
    const sewn = (passes: number): Pattern => {
      const treatments = dressed.dressing.treatments.map((treatment) => ({
        ...treatment,
        rows: treatment.rows.map((row) => ({ ...row, passes })),
        accents: [],
      }));
      return patternOf(dress(dressed.block, { ...dressed.dressing, treatments }, builtIn), builtIn);
    };
    const [once, thrice] = [sewn(1), sewn(3)];
    expect(thrice.dots).toEqual(once.dots);
    expect(thrice.lines).toEqual(once.lines);
  });

  it('names every seam by its number and stitch, away from what is drawn and from other names', () => {
    const texts = new Set(pattern.labels.map(({ text }) => text));
    const seams = dressed.lines.map(({ fit, treatment }) => {
      const title = builtIn.stitches.get(dressed.dressing.treatments[treatment].rows[0].stitch)!.title;
      return `${fit.seam === 'outline' ? 'edge' : fit.seam} ${title}`;
    });
    expect(seams.filter((name) => !texts.has(name))).toEqual([]);
    expect(texts).toContain('Daisy');
    const boxes = pattern.labels.map((label) => labelBox(label));
    const overlapping = boxes.filter((box, i) => boxes.slice(0, i).some((other) => boxesMeet(box, other)));
    expect(overlapping).toEqual([]);
  });

  it('marks what is put on by hand by a ring of its size, and names it', () => {
    const marks = dressed.lines.flatMap(({ fit }) => fit.marks);
    const rings = ofKind(pattern, 'byHand').map(({ points }) => boxOf([points]));
    expect(marks.length).toBeGreaterThan(10);
    const unmarked = marks.filter(({ at: [x, y], radius }) =>
      rings.every(
        ({ left, right, top, bottom }) =>
          Math.hypot((left + right) / 2 - x, (top + bottom) / 2 - y) > 1e-9 ||
          Math.abs((right - left) / 2 - radius) > 1e-9,
      ),
    );
    expect(unmarked).toEqual([]);
    const texts = pattern.labels.map(({ text }) => text);
    expect(texts).toEqual(expect.arrayContaining(['seed bead', 'small button']));
  });

  it('draws waves as lines to work on, and ribbon by both its edges', () => {
    // waves, two interlaced lines; the edge is worked a little inside the outline, which is there to follow
    const waved = dressed.lines.filter(({ fit }) => fit.stretches.some(({ waves }) => waves));
    const guides = waved.flatMap(({ fit }) => fit.guides);
    expect(guides.length).toBeGreaterThan(waved.length);
    expect(ofKind(pattern, 'guide').map(({ points }) => points)).toEqual(guides);
    const { width } = builtIn.treatments.get('herringbone-over-ribbon')!.laid!;
    const laid = dressed.lines.flatMap(({ fit }) => fit.layers.filter(({ kind }) => kind === 'placement'));
    const middle = laid.flatMap(({ chains }) => chains.flatMap(({ nodes }) => spots(nodes)));
    const edges = ofKind(pattern, 'ribbon');
    const far = middle.filter((spot) => {
      const [a, b] = edges.map((edge) => fromLine(spot, edge)).sort((x, y) => x - y);
      return Math.abs(a - width / 2) > 0.05 || Math.abs(b - width / 2) > 0.05;
    });
    expect(middle.length).toBeGreaterThan(20);
    expect([edges.length, far]).toEqual([2 * laid.length, []]);
  });

  it('lists the work in the order in which it is done, threads as heavy as those of a hand', () => {
    const places = pattern.entries.map(({ place }) => place).filter(Boolean);
    const order = dressed.lines.map(({ fit }) => (fit.seam === 'outline' ? 'edge' : String(fit.seam)));
    expect([...new Set(places)]).toEqual(order);
    expect(pattern.entries).toContainEqual(
      expect.objectContaining({
        what: expect.stringMatching(/^Seed bead on feather, \d+ of them$/),
        thread: 'put on by hand',
      }),
    );
    // README: three passes are about as heavy as pearl No. 5
    expect([1, 2, 3].map((passes) => likeByHand('No. 40', passes))).toEqual([
      'one-strand',
      'pearl-8',
      'pearl-5',
    ]);
  });

  it('holds only the seams that are asked for, and says which there are where it cannot', () => {
    const two = patternOf(dressed, builtIn, { lines: [3, 5] });
    expect([...new Set(two.entries.map(({ place }) => place))].sort()).toEqual(['3', '5']);
    expect(two.dots.length).toBeLessThan(pattern.dots.length);
    expect(() => patternOf(dressed, builtIn, { lines: [3, 44] })).toThrow(
      /--seam 44: has no treatment; choose among .*edge/,
    );
  });
});

describe('a mirrored pattern', () => {
  it('has every mark on the other side, and words that stay readable beside them', () => {
    const back = mirrored(pattern);
    const { left, right } = pattern.frame;
    const turned = (points: Points) => points.map((value, i) => (i % 2 ? value : left + right - value));
    expect(back.dots).toEqual(turned(pattern.dots));
    expect(back.lines.map(({ points }) => points)).toEqual(pattern.lines.map(({ points }) => turned(points)));
    expect(back.labels.map(({ text, size }) => [text, size])).toEqual(
      pattern.labels.map(({ text, size }) => [text, size]),
    );
    expect(back.labels.map(({ at }) => at[0])).toEqual(pattern.labels.map(({ at }) => left + right - at[0]));
    expect([back.frame, back.mirrored]).toEqual([pattern.frame, true]);
  });
});
