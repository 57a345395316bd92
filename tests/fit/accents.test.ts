import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AccentAsk } from '../../src/fit/accents.js';
import type { LineAsk } from '../../src/fit/ask.js';
import type { Chain, SeamFit } from '../../src/fit/fit.js';
import { fitLines } from '../../src/fit/fit-lines.js';
import { sizedOrnament } from '../../src/fit/sized-ornament.js';
import type { Values } from '../../src/stitches/stitch.js';
import { builtIn, endsOf, legNamed, stitchNamed } from '../stitches/dictionary.js';
import { askFor, legPoints } from './asks.js';
import { mapOfLines } from './block-of-lines.js';
import { corneredLine, curvedLine, type LineToDress, straightLine } from './lines-to-dress.js';

type XY = readonly [number, number];

const RULES = { gap: 0.6, outline: 'free' } as const;

function accent(
  ornament: string,
  more: Partial<Omit<AccentAsk, 'figures'>> = {},
  grades: readonly Values[] = [{}],
): AccentAsk {
  const figure = builtIn.ornaments.get(ornament)!;
  return {
    row: 0,
    seat: 'tip',
    figures: grades.map((grade) => sizedOrnament(figure, grade)),
    threads: figure.threads,
    byHand: null,
    passes: 2,
    every: 1,
    from: 0,
    turn: 0,
    away: 0,
    ...more,
  };
}

const worked = ({ points }: Pick<LineToDress, 'points'>, ask: LineAsk): SeamFit =>
  fitLines(mapOfLines([points]), [ask], RULES)[0].fit;

/** The figures of an accent in a single thread, one chain each. */
const figuresOf = (fit: SeamFit, index = 0): readonly Chain[] =>
  fit.layers.find((layer) => layer.kind === 'accent' && layer.index === index)?.chains ?? [];

/** Where a figure's own foot, its first point, stands. */
const footOf = ({ path }: Chain): XY => [path[0], path[1]];
const near = ([ax, ay]: XY, [bx, by]: XY) => Math.hypot(ax - bx, ay - by) < 1e-6;

/** The far ends of the arms of the first row, in order. */
function tipsOf(fit: SeamFit, stitch: string, leg = 'arm'): XY[] {
  const wanted = legNamed(stitchNamed(stitch).build({}), leg).class;
  const rows = fit.layers.filter(({ kind, index }) => kind === 'row' && index === 0);
  return rows
    .flatMap(({ chains }) => chains)
    .flatMap(({ to, nodes, legClass }) =>
      [...to.keys()]
        .filter((i) => legClass[i] === wanted)
        .map((i): XY => [nodes[2 * to[i]], nodes[2 * to[i] + 1]]),
    );
}

const smooth = fc.oneof(straightLine, curvedLine);

describe('accents', () => {
  test('stand one on every tip, on the one that closes the row too', () => {
    fc.assert(
      fc.property(smooth, fc.constantFrom('blanket', 'feather'), (line, stitch) => {
        const fit = worked(
          line,
          askFor(1, stitch, { sizes: { repeat: 9 }, accents: [accent('french-knot')] }),
        );
        const tips = tipsOf(fit, stitch);
        const figures = figuresOf(fit);
        expect(figures).toHaveLength(tips.length);
        expect(figures.filter((figure, k) => !near(footOf(figure), tips[k]))).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  test('stand on every second or third tip, from the first or a later one', () => {
    fc.assert(
      fc.property(
        smooth,
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 0, max: 3 }),
        (line, every, from) => {
          const knots = accent('french-knot', { every, from });
          const fit = worked(line, askFor(1, 'blanket', { sizes: { repeat: 5 }, accents: [knots] }));
          const chosen: XY[] = [];
          const tips = tipsOf(fit, 'blanket');
          for (let k = from; k < tips.length; k += every) chosen.push(tips[k]);
          const figures = figuresOf(fit);
          expect(figures).toHaveLength(chosen.length);
          expect(figures.filter((figure, k) => !near(footOf(figure), chosen[k]))).toEqual([]);
        },
      ),
      { numRuns: 20 },
    );
  });

  test('in grades follow each other in turn: one, three, five, three petals, and one again', () => {
    const grades = [1, 3, 5, 3].map((petals) => ({ size: 4.8, fan: 36, petals }));
    fc.assert(
      fc.property(straightLine, (line) => {
        const sprays = accent('petal-spray', {}, grades);
        const fit = worked(line, askFor(1, 'blanket', { sizes: { repeat: 9.5 }, accents: [sprays] }));
        const petals = figuresOf(fit).map(
          ({ legClass, kind }) => new Set([...legClass].filter((_, i) => kind[i] === 'loop')).size,
        );
        expect(petals).toHaveLength(tipsOf(fit, 'blanket').length);
        expect(petals).toEqual(petals.map((_, k) => [1, 3, 5, 3][k % 4]));
      }),
      { numRuns: 10 },
    );
  });

  test('point away from the line, to both hands of a stitch that alternates', () => {
    fc.assert(
      fc.property(smooth, fc.constantFrom('feather', 'cretan', 'blanket'), (line, stitch) => {
        const fit = worked(
          line,
          askFor(1, stitch, { sizes: { repeat: 10 }, accents: [accent('daisy-petal')] }),
        );
        const figures = figuresOf(fit);
        expect(figures.length).toBeGreaterThan(3);
        const seam = mapOfLines([line.points]).seams[0].points;
        const hands = new Set<number>();
        for (const figure of figures) {
          const points = legPoints([figure]);
          const { foot, up, hand } = uprightAt(seam, footOf(figure));
          hands.add(hand);
          // the daisy's own up: from its foot to the end of the stitch that holds it
          const [ex, ey] = points.reduce((far, p) =>
            Math.hypot(p[0] - foot[0], p[1] - foot[1]) > Math.hypot(far[0] - foot[0], far[1] - foot[1])
              ? p
              : far,
          );
          const long = Math.hypot(ex - foot[0], ey - foot[1]);
          expect(((ex - foot[0]) * up[0] + (ey - foot[1]) * up[1]) / long).toBeGreaterThan(0.99);
        }
        expect(hands.size).toBe(stitch === 'blanket' ? 1 : 2);
      }),
      { numRuns: 20 },
    );
  });

  test('are moved away from the seat straight up, and turned counterclockwise as seen', () => {
    fc.assert(
      fc.property(
        straightLine,
        fc.double({ min: 0, max: 4, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (line, away, turn) => {
          const petals = accent('daisy-petal', { away, turn });
          const fit = worked(line, askFor(1, 'blanket', { sizes: { repeat: 12 }, accents: [petals] }));
          const tips = tipsOf(fit, 'blanket');
          const [, end] = endsOf(legNamed(builtIn.ornaments.get('daisy-petal')!.build({}), 'hold'));
          const figures = figuresOf(fit);
          expect(figures).toHaveLength(tips.length);
          for (const [k, figure] of figures.entries()) {
            // left of a seam that runs right is up, and y grows downwards
            const foot: XY = [tips[k][0], tips[k][1] - away];
            const head: XY = [foot[0] - end[1] * Math.sin(turn), foot[1] - end[1] * Math.cos(turn)];
            expect(near(footOf(figure), foot)).toBe(true);
            expect(legPoints([figure]).some((point) => near(point, head))).toBe(true);
          }
        },
      ),
      { numRuns: 20 },
    );
  });

  test('in two threads get a layer for each thread, with as many figures', () => {
    fc.assert(
      fc.property(straightLine, (line) => {
        const fans = accent('fan', { every: 3 });
        const fit = worked(line, askFor(1, 'blanket', { sizes: { repeat: 6 }, accents: [fans] }));
        const layers = fit.layers.filter(({ kind }) => kind === 'accent');
        expect(layers.map(({ thread }) => thread)).toEqual([0, 1]);
        expect(layers[0].chains.length).toBeGreaterThan(1);
        expect(layers[1].chains).toHaveLength(layers[0].chains.length);
      }),
      { numRuns: 5 },
    );
  });

  test('put on by hand are marked, not sewn: a mark of the size asked for on every tip', () => {
    const bead = { ...accent('french-knot', { away: 1 }, [{ size: 1.8 }]), byHand: 'bead', threads: [] };
    const fit = worked(
      {
        points: [
          [30, 100],
          [110, 100],
        ],
      },
      askFor(1, 'blanket', { accents: [bead] }),
    );
    expect(fit.layers.map(({ kind }) => kind)).toEqual(['row']);
    const tips = tipsOf(fit, 'blanket');
    expect(fit.marks.map(({ what, index }) => `${what} ${index}`)).toEqual(tips.map(() => 'bead 0'));
    expect(fit.marks.filter(({ at }, k) => !near(at, [tips[k][0], tips[k][1] - 1]))).toEqual([]);
  });
});

describe('figures with no room', () => {
  const along = (angle: number) =>
    mapOfLines([
      [
        [30, 100],
        [170, 100],
      ],
      [
        [100, 100],
        [100 + 70 * Math.cos(angle), 100 + 70 * Math.sin(angle)],
      ],
    ]);
  const legsOfWhole = builtIn.ornaments.get('daisy-petal')!.build({}).legs.length;

  test('off the cloth near an end cut at a slant are left out whole; all that stay are whole and on the cloth', () => {
    const slants = fc.sample(fc.double({ min: 0.4, max: 1.2, noNaN: true }), { numRuns: 15, seed: 3 });
    let missing = 0;
    for (const angle of slants) {
      const ask = askFor(2, 'feather', { manner: 'bevel', accents: [accent('daisy-petal', { away: 1 })] });
      const [, { fit }] = fitLines(along(angle), [askFor(1, 'herringbone', { manner: 'bevel' }), ask], RULES);
      const figures = figuresOf(fit);
      missing += fit.stretches.reduce((sum, { repeats }) => sum + 2 * repeats, 0) - figures.length;
      expect(new Set(figures.map(({ from }) => from.length))).toEqual(new Set([legsOfWhole]));
      expect(Math.min(...legPoints(figures).map(([, y]) => y))).toBeGreaterThan(103);
      const [{ asked, leftOut }] = fit.accents;
      expect(leftOut).toHaveLength(asked - figures.length);
      expect(leftOut.map(({ why }) => why).filter((why) => why !== 'past-end')).toEqual([]);
    }
    expect(missing).toBeGreaterThan(0);
  });

  test('at a seam that is left bare are left out where they would lie across it, whatever the manner', () => {
    let missing = 0;
    for (const manner of ['tuck', 'bevel', 'short'] as const) {
      for (const angle of fc.sample(fc.double({ min: 0.4, max: 2.7, noNaN: true }), {
        numRuns: 10,
        seed: 6,
      })) {
        const accents = [accent('daisy-petal', { away: 1 })];
        const [{ fit }] = fitLines(along(angle), [askFor(2, 'feather', { manner, accents })], RULES);
        const figures = figuresOf(fit);
        expect(figures.length).toBeGreaterThan(3);
        expect(Math.min(...legPoints(figures).map(([, y]) => y))).toBeGreaterThan(99.9);
        missing += fit.accents[0].leftOut.length;
      }
    }
    expect(missing).toBeGreaterThan(0);
  });

  test('under the thread of the treatment that runs through go whole; none that stay come near it', () => {
    const told: (number | 'outline' | undefined)[] = [];
    for (const angle of fc.sample(fc.double({ min: 0.7, max: 2.4, noNaN: true }), { numRuns: 15, seed: 4 })) {
      const asks = [
        askFor(1, 'herringbone'),
        askFor(2, 'feather', { accents: [accent('daisy-petal', { away: 0.5 })] }),
      ];
      const [through, tucked] = fitLines(along(angle), asks, RULES);
      const alone = fitLines(along(angle), [asks[1]], RULES)[0];
      const figures = figuresOf(tucked.fit);
      expect(tucked.tucksUnder).toEqual([1]);
      expect(figures.length).toBeGreaterThan(3);
      expect(figures.length).toBeLessThanOrEqual(figuresOf(alone.fit).length);
      expect(new Set(figures.map(({ from }) => from.length))).toEqual(new Set([legsOfWhole]));
      const strokes = through.fit.layers.flatMap(({ chains }) => chains.flatMap(seenSegments));
      const clear = legPoints(figures).map((point) =>
        Math.min(...strokes.map((one) => distanceTo(one, point))),
      );
      // 1 mm and a thread's width stay clear of a covering thread
      expect(Math.min(...clear)).toBeGreaterThanOrEqual(1.4 - 1e-6);
      const [{ asked, leftOut }] = tucked.fit.accents;
      expect(asked).toBe(figures.length + leftOut.length);
      told.push(...leftOut.filter(({ why }) => why === 'on-thread').map(({ other }) => other));
    }
    // what is left out for another's thread names the line whose thread it is
    expect(new Set(told)).toEqual(new Set([1]));
  });

  test('in several threads stay in all of them or go in all of them', () => {
    const daisy = builtIn.ornaments.get('daisy')!;
    const legsOf = (thread: number) => daisy.build({}).legs.filter((leg) => leg.thread === thread).length;
    let gone = 0;
    for (const angle of fc.sample(fc.double({ min: 0.5, max: 2.6, noNaN: true }), { numRuns: 15, seed: 5 })) {
      const asks = [
        askFor(1, 'herringbone'),
        askFor(2, 'feather', { sizes: { repeat: 12 }, accents: [accent('daisy', { away: 1 })] }),
      ];
      const [, { fit }] = fitLines(along(angle), asks, RULES);
      const threads = fit.layers.filter(({ kind }) => kind === 'accent').map(({ chains }) => chains);
      expect(threads).toHaveLength(daisy.threads.length);
      const [{ asked, leftOut }] = fit.accents;
      for (const [thread, chains] of threads.entries()) {
        expect(chains).toHaveLength(asked - leftOut.length);
        expect(chains.filter(({ from }) => from.length !== legsOf(thread))).toEqual([]);
      }
      // figure by figure the threads lie in each other: petals round their own center
      const middles = threads.map((chains) => chains.map((chain) => middleOf(legPoints([chain]))));
      const apart = middles[0].map(([x, y], k) => Math.hypot(x - middles[1][k][0], y - middles[1][k][1]));
      expect(Math.max(...apart)).toBeLessThan(1);
      gone += leftOut.filter(({ why }) => why === 'on-thread').length;
    }
    expect(gone).toBeGreaterThan(0);
  });

  test('crowded on the inner side of a corner are left out; outside it all stand', () => {
    fc.assert(
      fc.property(corneredLine, (line) => {
        const [inside, outside] = (['left', 'right'] as const)
          .map((side) => {
            const petals = accent('daisy-petal', { away: 1 });
            const sizes = { repeat: 5, width: 6 };
            return worked(line, askFor(1, 'blanket', { sizes, side, accents: [petals] }));
          })
          .sort((a, b) => lengthThrough(tipsOf(a, 'blanket')) - lengthThrough(tipsOf(b, 'blanket')));
        expect(figuresOf(outside)).toHaveLength(tipsOf(outside, 'blanket').length);
        expect(figuresOf(inside).length).toBeLessThan(tipsOf(inside, 'blanket').length);
        expect(outside.accents).toEqual([{ asked: tipsOf(outside, 'blanket').length, leftOut: [] }]);
        const [{ asked, leftOut }] = inside.accents;
        expect(asked).toBe(tipsOf(inside, 'blanket').length);
        expect(new Set(leftOut.map(({ why }) => why))).toEqual(new Set(['crowded']));
        expect(leftOut).toHaveLength(asked - figuresOf(inside).length);
        const middles = figuresOf(inside).map((figure) => middleOf(legPoints([figure])));
        const apart = middles.slice(1).map(([x, y], k) => Math.hypot(x - middles[k][0], y - middles[k][1]));
        // petals half as wide as they are long stand beside each other without touching
        expect(Math.min(...apart)).toBeGreaterThan(2);
      }),
      { numRuns: 20 },
    );
  });
});

const lengthThrough = (points: readonly XY[]): number =>
  points.slice(1).reduce((sum, [x, y], k) => sum + Math.hypot(x - points[k][0], y - points[k][1]), 0);

/** The nearest place on a line: which way a figure standing at a point stands upright, and on which hand. */
function uprightAt(seam: Float64Array, foot: XY): { foot: XY; up: XY; hand: number } {
  let [least, up, hand]: [number, XY, number] = [Infinity, [0, 0], 0];
  for (let k = 0; k + 3 < seam.length; k += 2) {
    const [ax, ay, dx, dy] = [seam[k], seam[k + 1], seam[k + 2] - seam[k], seam[k + 3] - seam[k + 1]];
    const t = Math.min(1, Math.max(0, ((foot[0] - ax) * dx + (foot[1] - ay) * dy) / (dx * dx + dy * dy)));
    const [x, y] = [foot[0] - ax - t * dx, foot[1] - ay - t * dy];
    const long = Math.hypot(x, y);
    if (long >= least) continue;
    [least, up, hand] = [long, [x / long, y / long], Math.sign(dx * y - dy * x)];
  }
  return { foot, up, hand };
}

describe('accents that lean together inside a bend', () => {
  /** The least distance between points of one figure and the thread of another. */
  const least = (figures: readonly Chain[]): number => {
    const seen = figures.map(seenSegments);
    const isBeside = (a: Chain, b: Chain) =>
      a !== b && Math.hypot(footOf(a)[0] - footOf(b)[0], footOf(a)[1] - footOf(b)[1]) < 16;
    const apart = figures.flatMap((figure) =>
      seen.flatMap((others, k) =>
        !isBeside(figure, figures[k])
          ? []
          : legPoints([figure]).map((point) => Math.min(...others.map((one) => distanceTo(one, point)))),
      ),
    );
    return Math.min(...apart);
  };
  /** The figures of each side, away from the corner. */
  const sidesOf = (figures: readonly Chain[]): (readonly Chain[])[] => {
    const away = figures.map((figure) => {
      const [x, y] = footOf(figure);
      return Math.hypot(x - 100, y - 100) > 18 ? (x < 90 && Math.abs(y - 100) < 8 ? 0 : 1) : -1;
    });
    return [0, 1].map((side) => figures.filter((_, k) => away[k] === side));
  };
  const sizeOf = (figure: Chain): number =>
    Math.max(...legPoints([figure]).map(([x, y]) => Math.hypot(x - figure.path[0], y - figure.path[1])));
  const corner = (turn: number): XY[] => [
    [40, 100],
    [100, 100],
    [100 + 60 * Math.cos(turn), 100 - 60 * Math.sin(turn)],
  ];
  const onCrests = (stitch: string, ornament: string, length: number, more: Partial<AccentAsk> = {}) =>
    askFor(1, stitch, {
      sizes: stitch === 'blanket' ? { width: 3 } : {},
      waves: { shape: 'wave', height: 4, length },
      accents: [accent(ornament, { seat: 'crest', ...more })],
    });

  test('keep as far apart on the crests inside a corner as on a straight, or the clearance of 0.6 mm; some are smaller, and those left out are told', () => {
    const wrong: string[] = [];
    let [smaller, left] = [0, 0];
    for (const [stitch, ornament, away] of [
      ['stem', 'fan', 0],
      ['stem', 'petal-spray', 0],
      ['stem', 'daisy', 1],
      ['blanket', 'fan', 0.6],
      ['split', 'leaf-spray', 0],
    ] as const) {
      for (const length of [12, 15]) {
        for (const degrees of [60, 90, -90, 115]) {
          const ask = onCrests(stitch, ornament, length, { away });
          const fit = worked({ points: corner((degrees * Math.PI) / 180) }, ask);
          const figures = figuresOf(fit);
          // whole waves are a little longer or shorter on each of the two sides
          const needed = Math.min(0.6, ...sidesOf(figures).map(least)) - 0.06;
          const found = least(figures);
          if (found < needed)
            wrong.push(`${stitch}, ${ornament}, ${length}, ${degrees} degrees: ${found.toFixed(2)} mm`);
          const [{ asked, leftOut }] = fit.accents;
          if (asked !== figures.length + leftOut.length) wrong.push(`${stitch}, ${ornament}: not all told`);
          left += leftOut.filter(({ why }) => why === 'crowded').length;
          const sizes = figures.map(sizeOf);
          if (Math.min(...sizes) < 0.97 * Math.max(...sizes)) smaller++;
          // none becomes a dot
          if (Math.min(...sizes) < 0.54 * Math.max(...sizes)) wrong.push(`${stitch}, ${ornament}: too small`);
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(smaller).toBeGreaterThan(3);
    expect(left).toBeGreaterThan(0);
  });

  test('stay as they are on a straight, and in the corner when they are put on by hand: those too near are left out', () => {
    const straight = figuresOf(worked({ points: corner(0) }, onCrests('stem', 'petal-spray', 12)));
    const sizes = straight.map(sizeOf);
    expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThan(1e-6);
    const charm = { byHand: 'charm', threads: [] };
    const { marks, accents } = worked(
      { points: corner(Math.PI / 2) },
      onCrests('stem', 'petal-spray', 12, charm),
    );
    const radii = marks.map(({ radius }) => radius);
    expect(Math.max(...radii) - Math.min(...radii)).toBeLessThan(1e-3);
    expect(marks.length).toBe(accents[0].asked - accents[0].leftOut.length);
  });
});

type Segment = readonly [number, number, number, number];

const seenSegments = ({ path, pathStart, from, kind }: Chain): Segment[] =>
  [...from.keys()]
    .filter((leg) => kind[leg] !== 'under')
    .flatMap((leg) =>
      Array.from({ length: pathStart[leg + 1] - pathStart[leg] - 1 }, (_, i): Segment => {
        const k = 2 * (pathStart[leg] + i);
        return [path[k], path[k + 1], path[k + 2], path[k + 3]];
      }),
    );

function distanceTo([ax, ay, bx, by]: Segment, [x, y]: XY): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

function middleOf(points: readonly XY[]): XY {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}
