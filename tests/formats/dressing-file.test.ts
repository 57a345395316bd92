import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDressing, writeDressing } from '../../src/formats/dressing-file.js';
import { InputError } from '../../src/input-error.js';
import { apron, dressingArbitrary } from './dressings.js';

async function refused(text: string): Promise<InputError> {
  try {
    await readDressing(text, 'apron.dressing.json');
  } catch (error) {
    if (error instanceof InputError) {
      expect(error.message, 'one line').not.toMatch(/[\n\r]/);
      return error;
    }
    throw error;
  }
  throw new Error('the dressing was read');
}

/** The apron's JSON with one value put in at a path (undefined takes it away). */
function changed(path: (string | number)[], value: unknown): string {
  const copy = structuredClone(apron) as unknown as Record<string | number, unknown>;
  const holder = path.slice(0, -1).reduce((at, key) => at[key] as Record<string | number, unknown>, copy);
  holder[path[path.length - 1]] = value;
  return JSON.stringify(copy);
}

describe('a saved dressing', () => {
  it('comes back as it was', async () => {
    await fc.assert(
      fc.asyncProperty(dressingArbitrary, async (dressing) => {
        expect(await readDressing(writeDressing(dressing), 'x')).toEqual(dressing);
      }),
    );
  });

  it('is written alike, whatever the order of its keys was', async () => {
    const turned = JSON.parse(JSON.stringify(apron), (_, value) =>
      value && typeof value === 'object' && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).reverse())
        : value,
    );
    expect(Object.keys(turned)[0]).toBe('seed');
    expect(writeDressing(turned)).toBe(writeDressing(apron));
    const text = writeDressing(apron);
    expect(writeDressing(await readDressing(text, 'x'))).toBe(text);
  });

  it('is laid out for people: a row and a thread on a line each', () => {
    const lines = writeDressing(apron).split('\n');
    expect(lines).toContain(
      '        { "stitch": "feather", "parameters": { "repeat": 6, "width": 8 }, "thread": 0, "passes": 3, "offset": 0 },',
    );
    expect(lines).toContain('    { "name": "moss", "hex": "#556B2F", "weight": "No. 12" }');
    expect(lines).toContain('  "gap": 0.6,');
  });

  it('cannot hold what is no number', () => {
    expect(() => writeDressing({ ...apron, gap: Number.NaN })).toThrow(RangeError);
    expect(() => writeDressing({ ...apron, gap: Number.POSITIVE_INFINITY })).toThrow(RangeError);
  });

  it('may begin with a byte order mark', async () => {
    expect(await readDressing(`\uFEFF${writeDressing(apron)}`, 'x')).toEqual(apron);
  });
});

describe('a dressing with mistakes in it', () => {
  it.each([
    [['ends'], 'tuk', 'ends is "tuk", not "tuck", "bevel" or "short"'],
    [['gap'], '0.6', 'gap is "0.6", not a length from 0 to 10 mm'],
    [
      ['treatments', 0, 'rows', 0, 'offset'],
      50.1,
      'treatments[0].rows[0].offset is 50.1, not a length from -50 to 50 mm',
    ],
    [['gap'], -1, 'gap is -1, not a length from 0 to 10 mm'],
    [
      ['density'],
      { holes: [8, 4], cover: 40 },
      'density.holes is [8, 4], not the lower one first, density.cover is 40, not a share from 0.01 to 1',
    ],
    [
      ['density'],
      { layers: [4] },
      'density.layers is a list in brackets, not two numbers from 0.5 to 100, the lower one first: worth a look, too much',
    ],
    [['density'], { cloth: 'silk' }, 'density.cloth is "silk", not "firm" or "fine"'],
    [['seed'], undefined, 'seed is missing (a whole number from 0 to 4294967295)'],
    [['sede'], 1, 'sede is not known here (did you mean seed?)'],
    [['treatments', 0, 'side'], 'up', 'treatments[0].side is "up", not "left" or "right" or null'],
    [
      ['treatments', 0, 'rows', 1, 'passes'],
      2.5,
      'treatments[0].rows[1].passes is 2.5, not a whole number from 1 to 20',
    ],
    [
      ['treatments', 0, 'rows', 1, 'heavy'],
      'pearl-8',
      'treatments[0].rows[1] has passes and heavy, but only one of them may be there',
    ],
    [
      ['treatments', 0, 'rows', 1, 'passes'],
      undefined,
      'treatments[0].rows[1] has none of passes, heavy and needs one',
    ],
    [
      ['treatments', 0, 'rows', 1, 'heavy'],
      'pearl-12',
      'treatments[0].rows[1].heavy is "pearl-12", not "one-strand", "two-strands", "pearl-8" or "pearl-5"',
    ],
    [
      ['treatments', 0, 'accents'],
      [{ row: 0, seat: 'tip', ornament: 'daisy', parameters: {}, thread: 0, passes: 2, heavy: 'pearl-8' }],
      'treatments[0].accents[0] has passes and heavy, but only one of them may be there',
    ],
    [
      ['treatments', 1, 'rows'],
      [],
      'treatments[1].rows is an empty list, not a list of at least one row, twenty at most',
    ],
    [
      ['treatments', 0, 'rows', 0, 'parameters', 'width'],
      '8mm',
      'treatments[0].rows[0].parameters.width is "8mm", not a number',
    ],
    [
      ['treatments', 0, 'accents'],
      [{ row: 2, seat: 'tip', ornament: 'daisy', parameters: {}, thread: 0, passes: 2 }],
      'treatments[0].accents[0].row is 2, but rows has 2 in it, counted from 0',
    ],
    [
      ['treatments', 0, 'accents'],
      [{ row: 0, seat: 'tip', ornament: null, parameters: {}, thread: 0, passes: 2 }],
      'treatments[0].accents[0] has neither an ornament nor byHand',
    ],
    [
      ['treatments', 0, 'rows', 0, 'moreThreads'],
      [1, 2],
      'treatments[0].rows[0].moreThreads[1] is 2, but threads has 2 in it, counted from 0',
    ],
    [['treatments', 0, 'rows', 1, 'times'], 3, 'treatments[0].rows[1].times is 3, not 0.5, 1 or 2'],
    [['treatments', 0, 'seam', 'id'], 0, 'treatments[0].seam.id is 0, not the number of a seam or "outline"'],
    [
      ['treatments', 0, 'seam', 'middle'],
      [1],
      'treatments[0].seam.middle is a list in brackets, not a point [x, y] in mm or null',
    ],
    [
      ['treatments', 0, 'seam', 'ends', 1, 0],
      '5',
      'treatments[0].seam.ends[1][0] is "5", not a length from -10000 to 10000 mm',
    ],
    [['block', 'stops'], [1, 0], 'block.stops[1] is 0, not a whole number from 1 to 1000'],
    [['block', 'file'], '', 'block.file is "", not the path of a drawing or stitch file'],
    [['hoop', 'width'], 'wide', 'hoop.width is "wide", not a length from 1 to 10000 mm'],
    [['hoop'], 7, 'hoop is 7, not an object in braces or null'],
    [['threads', 0, 'hex'], 'gold', 'threads[0].hex is "gold", not a color like "#b8860b"'],
    [
      ['threads', 0, 'weight'],
      'No. nothing',
      'threads[0].weight is "No. nothing", not a weight like "No. 40"',
    ],
    [
      ['treatments', 1, 'rows', 0, 'thread'],
      2,
      'treatments[1].rows[0].thread is 2, but threads has 2 in it, counted from 0',
    ],
    [['version'], 0, 'version is 0, not 1'],
  ] as [(string | number)[], unknown, string][])('%j = %j', async (path, value, wrong) => {
    const error = await refused(changed(path, value));
    expect(error.wrong).toBe(wrong);
    expect(error.where).toBe('apron.dressing.json');
  });

  it('is told of all of them at once, each with its place', async () => {
    const record = JSON.parse(changed(['ends'], 'tuk'));
    record.treatments[1].rows[0].passes = 0;
    record.threads[1].weight = 40;
    record.hoop.depth = 3;
    const { wrong, right } = await refused(JSON.stringify(record));
    for (const place of ['ends', 'treatments[1].rows[0].passes', 'threads[1].weight', 'hoop.depth']) {
      expect(
        wrong.split(', ').some((phrase) => phrase.startsWith(`${place} is `)),
        `${place} in: ${wrong}`,
      ).toBe(true);
    }
    expect(right).toBe('correct these 4 places');
  });

  it('stays one line of bearable length when everything is wrong', async () => {
    const rows = Array.from({ length: 5000 }, () => ({ '\n': 1 }));
    const { message } = await refused(changed(['treatments', 0, 'rows'], rows));
    expect(message.length).toBeLessThan(6000);
    expect(message).toMatch(/and \d+ more/);
    const long = await refused(changed(['ends'], 'x\n'.repeat(1e6)));
    expect(long.message.length).toBeLessThan(300);
  });

  it('with any one value replaced by something else is read or refused in a line', async () => {
    const odd = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.constantFrom(1e308, -1, '', '\n', [[[]]], { a: { b: 1 } }),
    );
    const paths: (string | number)[][] = [];
    const walk = (value: unknown, path: (string | number)[]) => {
      if (path.length) paths.push(path);
      if (Array.isArray(value)) for (const [i, item] of value.entries()) walk(item, [...path, i]);
      else if (value && typeof value === 'object')
        for (const [key, item] of Object.entries(value)) walk(item, [...path, key]);
    };
    walk(apron, []);
    let refusals = 0;
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...paths), odd, async (path, value) => {
        const text = changed(path, value);
        try {
          expect(JSON.parse(writeDressing(await readDressing(text, 'x')))).toEqual(JSON.parse(text));
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          expect(error.message).not.toMatch(/[\n\r]/);
          refusals++;
        }
      }),
      { numRuns: 1000 },
    );
    expect(refusals).toBeGreaterThan(500);
  });
});

describe('a file that is no dressing', () => {
  it('of a newer version is told apart from one with mistakes', async () => {
    const { code, wrong, right } = await refused(changed(['version'], 2));
    expect(code).toBe('newer-dressing');
    expect(wrong).toBe('the dressing is of version 2, from a newer program');
    expect(right).toContain('version 1');
  });

  it('is refused as such', async () => {
    for (const text of ['null', '[]', '7', '"x"', '{}', '{"format":"other","version":9}']) {
      expect((await refused(text)).code, text).toBe('not-a-dressing');
    }
  });

  it('is refused with line and column where it is no JSON', async () => {
    const places: [string, string, string][] = [
      ['{\n  "a": x\n}', 'line 2 column 8', 'this is no JSON word'],
      ['{\n  "a": 1\n  "b": 2\n}', 'line 3 column 3', 'a comma is missing'],
      ['{"a": 1', 'line 1 column 8', 'a closing brace is missing'],
      ['', 'line 1 column 1', 'a value is missing'],
      ['{"a": 1} x', 'line 1 column 10', 'this is no JSON word'],
      ['{"a": 1, // why\n"b": 2}', 'line 1 column 10', 'JSON has no comments'],
      ['<svg/>', 'line 1 column 1', 'this is no JSON word'],
    ];
    for (const [text, place, wrong] of places) {
      const error = await refused(text);
      expect([error.where, error.wrong], text).toEqual([`apron.dressing.json ${place}`, wrong]);
    }
  });

  it('is told every line on which it goes wrong', async () => {
    const text = '{\n  "a" 1,\n  "b": [1,,2]\n  "c": 3\n}';
    const error = await readDressing(text, 'apron.dressing.json').catch((refusal) => refusal);
    expect(error.errors.map(({ where, wrong }: InputError) => `${where}: ${wrong}`)).toEqual([
      'apron.dressing.json line 2 column 7: a colon is missing',
      'apron.dressing.json line 3 column 11: a value is missing',
      'apron.dressing.json line 4 column 3: a comma is missing',
    ]);
  });

  it('cut off anywhere, or nested a million deep, is refused without a crash', async () => {
    const text = writeDressing(apron).trimEnd();
    for (let length = 0; length < text.length; length += 7) {
      expect((await refused(text.slice(0, length))).code).toBe('not-json');
    }
    expect((await refused('['.repeat(1e6))).code).toBe('not-json');
    expect((await refused(`${'['.repeat(1e5)}${']'.repeat(1e5)}`)).code).toBe('not-a-dressing');
    const deep = JSON.stringify(apron).replace('"tuck"', `${'['.repeat(1e5)}${']'.repeat(1e5)}`);
    expect((await refused(deep)).code).toBe('dressing-mistakes');
  });
});
