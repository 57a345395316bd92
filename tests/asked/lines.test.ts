import { describe, expect, test } from 'vitest';
import { askedLines } from '../../src/asked/lines.js';
import { writeDesign } from '../../src/design/write-design.js';
import { dress } from '../../src/dress.js';
import type { Accent, Dressing, Row } from '../../src/formats/dressing.js';
import { InputError } from '../../src/input-error.js';
import { mapOfLines } from '../fit/block-of-lines.js';
import { builtIn } from '../stitches/dictionary.js';
import { dressingOf, oneSeam } from './dressed-line.js';

const row = (stitch: string, more: Partial<Row> = {}): Row => ({
  stitch,
  parameters: {},
  thread: 0,
  passes: 3,
  offset: 0,
  ...more,
});
const accent = (more: Partial<Accent> = {}): Accent => ({
  row: 0,
  seat: 'tip',
  ornament: 'french-knot',
  parameters: {},
  thread: 1,
  passes: 2,
  ...more,
});

function refusal(dressing: Dressing): InputError {
  try {
    askedLines(oneSeam.map, dressing, builtIn);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('a dressing that cannot be worked is refused with the place and the way out', () => {
  test('a seat that the stitch does not have: its seats are named', () => {
    const error = refusal(dressingOf({ accents: [accent(), accent({ seat: 'crossing' })] }));
    expect(error.code).toBe('unknown-seat');
    expect(error.where).toBe('treatment 1 accent 2');
    expect(error.path).toEqual(['treatments', 0, 'accents', 1]);
    expect(error.message).toContain('blanket has no seat "crossing"');
    expect(error.right).toBe('its seats are tip, foot, window');
  });

  test('an ornament that there is not: the nearest name is offered', () => {
    const error = refusal(dressingOf({ accents: [accent({ ornament: 'frensh-knot' })] }));
    expect(error.code).toBe('unknown-ornament');
    expect(error.path).toEqual(['treatments', 0, 'accents', 0]);
    expect(error.right).toContain('"french-knot"');
  });

  test('a stitch that there is not, in a further row', () => {
    const error = refusal(dressingOf({ rows: [row('blanket'), row('blankett')] }));
    expect(error.code).toBe('unknown-stitch');
    expect(error.where).toBe('treatment 1 row 2');
    expect(error.path).toEqual(['treatments', 0, 'rows', 1]);
    expect(error.right).toContain('"blanket"');
  });

  test('a size out of range, of a row or a figure: the range is named', () => {
    const wide = refusal(dressingOf({ rows: [row('blanket', { parameters: { width: 99 } })] }));
    expect(wide.code).toBe('size-out-of-range');
    expect(wide.where).toBe('treatment 1 row 1, blanket width');
    expect(wide.message).toContain('2 to 16 mm');
    const large = refusal(dressingOf({ accents: [accent({ parameters: { size: 9 } })] }));
    expect(large.where).toBe('treatment 1 accent 1, french-knot size');
    expect(large.message).toContain('1.3 to 1.8 mm');
    const graded = refusal(dressingOf({ accents: [accent({ graded: [{ size: 1.6 }, { size: 9 }] })] }));
    expect(graded.code).toBe('size-out-of-range');
  });

  test('a measure that the figure does not have: the nearest name is offered', () => {
    const error = refusal(dressingOf({ accents: [accent({ parameters: { siez: 2 } })] }));
    expect(error.code).toBe('unknown-parameter');
    expect(error.right).toContain('"size"');
  });

  test('a row that would have to keep step at a length it cannot have', () => {
    for (const [first, times, second] of [
      ['blanket', 2, 'feather'],
      ['feather', 0.5, 'chain'],
    ] as const) {
      const error = refusal(dressingOf({ rows: [row(first), row(second, { times })] }));
      expect(error.where).toContain('treatment 1 row 2');
      expect(error.path).toEqual(['treatments', 0, 'rows', 1]);
      expect(error.message).toContain('out of range');
    }
  });

  test('more than one slip is told in one go', () => {
    const one = dressingOf({ rows: [row('blankett')] });
    const two = { ...one, treatments: [...one.treatments, { ...one.treatments[0] }] };
    expect(refusal(two).message).toContain('already has treatment 1');
    expect(refusal(two).message).toContain('there is no stitch');
  });
});

describe('what a dressing asks of a seam', () => {
  test.each([...builtIn.treatments])('%s, as saved, can be worked', (_, saved) => {
    const { rows, accents, laid, guide, threads } = saved;
    const { design } = dress(oneSeam, dressingOf({ rows, accents, laid, guide }, { threads }), builtIn);
    expect(design.stops.length).toBeGreaterThanOrEqual(rows.length);
  });

  test('rows in step are made smaller together, no further than is good for each of them', () => {
    const scales = [3.4, 3.6, 4.5, 6].map((swing) => {
      const wave = Array.from({ length: 200 }, (_, i): [number, number] => [
        30 + i / 2,
        100 + swing * Math.sin(i / 10),
      ]);
      const rows = [row('blanket'), row('feather'), row('chain')];
      const asked = dressingOf({ rows, seam: { id: 1, middle: null, ends: null } });
      const [{ fit }] = dress({ ...oneSeam, map: mapOfLines([wave]) }, asked, builtIn).lines;
      return fit.scale!;
    });
    // feather is good from 4 mm a repeat, and blanket, which sets the step, is asked for at 5 mm
    expect(Math.min(...scales)).toBeGreaterThanOrEqual(4 / 5 - 1e-9);
    expect(Math.min(...scales)).toBeLessThan(1);
  });

  test('a flipped row stands to the other hand than the treatment', () => {
    const { lines } = askedLines(
      oneSeam.map,
      dressingOf({
        side: 'right',
        rows: [row('blanket', { flip: true }), row('blanket'), row('chain', { flip: true })],
      }),
      builtIn,
    );
    const [{ ask }] = lines;
    expect([ask.side, ...ask.followers.map(({ side }) => side)]).toEqual(['left', 'right', 'left']);
  });

  test('a second thread that is not named is the first', () => {
    const threads = (more: Partial<Row>) =>
      dress(
        oneSeam,
        dressingOf({ rows: [row('laced-running', { thread: 1, ...more })] }),
        builtIn,
      ).design.stops.map(({ title, thread }) => `${title}: ${thread.name}`);
    const [first, , third] = dressingOf()
      .threads.map(({ name }) => name)
      .slice(1);
    expect(threads({})).toEqual([
      `Laced running, lacing, seam 1: ${first}`,
      `Laced running, running, seam 1: ${first}`,
    ]);
    expect(threads({ moreThreads: [3] })).toEqual([
      `Laced running, lacing, seam 1: ${first}`,
      `Laced running, running, seam 1: ${third}`,
    ]);
  });

  test('accents are sewn after every row, since they lie on top', () => {
    const { design } = dress(
      oneSeam,
      dressingOf({ rows: [row('blanket'), row('chain')], accents: [accent()] }),
      builtIn,
    );
    expect(design.stops.map(({ kind }) => kind)).toEqual(['treatment', 'treatment', 'accent']);
  });

  test('a laid ribbon has its placement line sewn before what holds it', () => {
    const laid = { name: 'velvet ribbon', width: 5, hex: '#8c2f3f', thread: 2 };
    const { design } = dress(oneSeam, dressingOf({ rows: [row('herringbone')], laid }), builtIn);
    expect(design.stops.map(({ title }) => title)).toEqual([
      'Placement line for velvet ribbon, seam 1',
      'Herringbone, seam 1',
    ]);
    expect(design.stops[0].thread).toBe(dressingOf().threads[2]);
  });

  test('by hand to no measure gives the same bytes as not by hand; one seed the same bytes, another others', () => {
    const bytes = (more: Partial<Dressing>) =>
      writeDesign(dress(oneSeam, dressingOf({}, more), builtIn).design);
    const even = bytes({});
    expect(bytes({ byHand: 0 })).toEqual(even);
    const uneven = bytes({ byHand: 0.5, seed: 7 });
    expect(uneven).not.toEqual(even);
    expect(bytes({ byHand: 0.5, seed: 7 })).toEqual(uneven);
    expect(bytes({ byHand: 0.5, seed: 8 })).not.toEqual(uneven);
  });
});

// Sizes grow with the laid width of the thread: 0.65 mm in No. 12 against 0.4 in No. 40 (common practice).
test('a row and its accents get no smaller than their thread lets them', () => {
  const least = (weight: string) => {
    const threads = [
      { name: 'Gold', hex: '#c9a227', weight },
      { name: 'Garnet', hex: '#8c2f3f', weight },
    ];
    const [line] = askedLines(
      oneSeam.map,
      dressingOf({ rows: [row('blanket')] }, { threads }),
      builtIn,
    ).lines;
    return line.ask.sized.least;
  };
  expect(least('No. 12') / least('No. 40')).toBeCloseTo(0.65 / 0.4, 9);
  expect(least('No. 60')).toBe(least('No. 40'));
});
