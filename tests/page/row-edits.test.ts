import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figuresOf, offersOf } from '../../page/core/offers.js';
import {
  GRADES,
  type Grading,
  gradingOf,
  withAccentSize,
  withAlternate,
  withGrading,
  withHandThing,
  withOneMoreAccent,
  withoutAccent,
} from '../../page/state/accent-edits.js';
import { withGuide, withGuideSize } from '../../page/state/edits.js';
import { withOneMoreRow, withoutRow, withSameWork, withStitch } from '../../page/state/row-edits.js';
import { askedLines } from '../../src/asked/lines.js';
import { STEEPEST_GUIDE, type Treatment } from '../../src/formats/dressing.js';
import { dressingOf, oneSeam } from '../asked/dressed-line.js';
import { builtIn } from '../stitches/dictionary.js';

const offers = offersOf(builtIn);
const stitch = (name: string) => offers.find((one) => one.shelf === 'stitch' && one.name === name)!;
const figures = figuresOf(builtIn);
const figure = (name: string) => figures.find((one) => one.name === name)!;
const plain = dressingOf();
const of = (dressing: typeof plain): Treatment => dressing.treatments[0];
/** The core takes it. */
const isTaken = (dressing: typeof plain) => askedLines(oneSeam.map, dressing, builtIn).lines.length === 1;

describe('rows of a line', () => {
  it('are added back to back with the first, as heavy and in its thread; taken off again all is as it was', () => {
    const two = withOneMoreRow(plain, 1, stitch('herringbone'));
    expect(of(two).rows[1]).toMatchObject({ stitch: 'herringbone', flip: true, passes: 3, thread: 0 });
    expect(isTaken(two)).toBe(true);
    expect(of(withoutRow(two, 1, 1)).rows).toEqual(of(plain).rows);
    expect(of(withoutRow(plain, 1, 0)).rows).toEqual(of(plain).rows);
  });

  it('take the accents that sit on them along when they go, and no others', () => {
    const two = withOneMoreRow(plain, 1, stitch('blanket'));
    const three = withOneMoreAccent(withOneMoreRow(two, 1, stitch('fly')), 1, 'tip', figure('daisy'));
    const [one] = of(three).accents!;
    const on = {
      ...three,
      treatments: [{ ...of(three), accents: [one, { ...one, row: 1 }, { ...one, row: 2 }] }],
    };
    expect(of(withoutRow(on, 1, 1)).accents!.map(({ row }) => row)).toEqual([0, 1]);
  });

  it('in another stitch keep the sizes that it can have, whichever stitch it is', () => {
    const all = offers.filter(({ shelf }) => shelf === 'stitch');
    const wrong = all.filter((offer) => {
      const row = withStitch({ ...of(plain).rows[0], parameters: { repeat: 7, width: 30 } }, offer, 3);
      return !isTaken({ ...plain, treatments: [{ ...of(plain), rows: [row] }] });
    });
    expect(wrong).toEqual([]);
  });

  it('are given to all seams but those that are pinned', () => {
    const [one] = plain.treatments;
    const other = { ...one, seam: { ...one.seam, id: 2 } };
    const pinned = { ...one, seam: { ...one.seam, id: 3 }, pinned: true };
    const three = {
      ...plain,
      treatments: [{ ...one, rows: [{ ...one.rows[0], stitch: 'fly' }] }, other, pinned],
    };
    const done = withSameWork(three, three.treatments[0]);
    expect(done.treatments.map(({ rows }) => rows[0].stitch)).toEqual(['fly', 'fly', 'blanket']);
  });
});

describe('a guide line', () => {
  it('is never steeper than a thread could follow, whatever is dragged', () => {
    const size = fc.double({ min: 0.5, max: 100, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.boolean(), (height, length, isHighFirst) => {
        const waves = withGuide(plain, 1, 'wave');
        const steps = isHighFirst ? [{ height }, { length }] : [{ length }, { height }];
        const { guide } = of(steps.reduce((was, step) => withGuideSize(was, 1, step), waves));
        expect(guide!.height).toBeLessThanOrEqual(STEEPEST_GUIDE * guide!.length + 1e-9);
      }),
    );
  });

  it('of two interlaced lines has a row for each', () => {
    const { rows } = of(withGuide(plain, 1, 'interlace'));
    expect(rows.map(({ flip = false }) => flip)).toEqual([false, true]);
  });
});

describe('accents', () => {
  const knots = withOneMoreAccent(plain, 1, 'tip', figure('french-knot'));
  const [knot] = of(knots).accents!;

  it('of every figure can sit on every seat of every stitch', () => {
    const stitches = offers.filter(({ shelf, seats }) => shelf === 'stitch' && seats.length > 0);
    const wrong = stitches.flatMap((offer) => {
      const rows = [withStitch(of(plain).rows[0], offer, 3)];
      const on = { ...plain, treatments: [{ ...of(plain), rows }] };
      return offer.seats.filter((seat) => !isTaken(withOneMoreAccent(on, 1, seat, figure('daisy'))));
    });
    expect(wrong).toEqual([]);
    for (const one of figures) expect(isTaken(withOneMoreAccent(plain, 1, 'tip', one))).toBe(true);
  });

  it('alternate: each sits on every second seat, and between them on all', () => {
    const [one, other] = of(withAlternate(knots, 1, 0)).accents!;
    expect([one.every, one.from, other.every, other.from]).toEqual([2, 0, 2, 1]);
    const [a, b, c] = of(withAlternate(withAlternate(knots, 1, 0), 1, 1)).accents!;
    const on = [a, b, c].map(({ every = 1, from = 0 }) =>
      [0, 1, 2, 3, 4, 5, 6, 7].filter((n) => n >= from && (n - from) % every === 0),
    );
    expect(on.flat().sort()).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });

  it('are graded in a way that is known again, at any size', () => {
    for (const kind of Object.keys(GRADES) as Grading[]) {
      const graded = withGrading(knot, kind, figure('french-knot'));
      expect(gradingOf(graded, figure('french-knot'))).toBe(kind);
      const larger = withAccentSize(graded, 1.8, figure('french-knot'));
      expect(gradingOf(larger, figure('french-knot'))).toBe(kind);
      expect(Math.max(...(larger.graded ?? [larger.parameters]).map(({ size }) => size))).toBe(1.8);
    }
  });

  it('can be beads, which are put on by hand, and can be taken off again', () => {
    expect(withHandThing(knot, 'bead')).toMatchObject({
      ornament: null,
      byHand: 'bead',
      parameters: { size: 3 },
    });
    expect(of(withoutAccent(knots, 1, 0)).accents).toBeUndefined();
  });
});
