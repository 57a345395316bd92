import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/input-error.js';
import { checkStitchFile, readStitch } from '../../src/stitches/check.js';
import { findNamed } from '../../src/stitches/find-named.js';
import { parseStitch } from '../../src/stitches/parse.js';
import { schemaTexts } from '../../src/stitches/schema.js';
import { builtIn, dictionary, stitchFiles } from './dictionary.js';

// biome-ignore lint/suspicious/noExplicitAny: files are edited here as a maker would, also wrongly
type Edited = any;
const feather = (edit: (file: Edited) => void): object => {
  const file = JSON.parse(stitchFiles.find(({ name }) => name === 'feather')!.text);
  edit(file);
  return file;
};
const mistakes = async (source: string | object) =>
  (await checkStitchFile(source, 'my.json')).map(({ message }) => message);

describe('the built-in dictionary', () => {
  test('holds the stitches that every worker of crazy patchwork knows', () => {
    const titles = dictionary.map(({ title }) => title);
    for (const title of ['Blanket', 'Chevron', 'Cretan', 'Double feather', 'Feather', 'Fly', 'Herringbone']) {
      expect(titles).toContain(title);
    }
  });

  test.each(stitchFiles)('$name is sound, and names where its shape was learned', async ({ name, text }) => {
    expect(await mistakes(text)).toEqual([]);
    expect(JSON.parse(text).sources.length).toBeGreaterThan(0);
    expect((await readStitch(text, name)).build({})).toEqual(parseStitch(text, name).build({}));
  });

  test('gives no name to two stitches', () => {
    const names = dictionary.flatMap((stitch) => [
      ...new Set([stitch.name, stitch.title.toLowerCase()]),
      ...stitch.otherNames,
    ]);
    expect(new Set(names.map((name) => name.toLowerCase().replaceAll(' ', '-'))).size).toBeGreaterThanOrEqual(
      names.length - dictionary.length,
    );
    for (const stitch of dictionary) {
      for (const other of stitch.otherNames)
        expect(findNamed(builtIn.stitches, other, 'stitch')).toBe(stitch);
    }
  });

  test('has published schemas that are up to date (else: npx tsx tests/stitches/write-schema.ts)', async () => {
    for (const [kind, text] of Object.entries(await schemaTexts())) {
      const published = readFileSync(new URL(`../../motifs/${kind}.schema.json`, import.meta.url), 'utf8');
      expect(published).toBe(text);
    }
  });
});

describe('a mistake in a stitch file is told with its place, and with what would be right', () => {
  test.each<[string, (file: Edited) => void, string]>([
    [
      'a word misspelled',
      (f) => {
        f.titel = 'x';
      },
      'my.json titel: "titel" is not known here; did you mean "title"?',
    ],
    [
      'a part missing',
      (f) => {
        delete f.points;
      },
      'my.json points: it is missing; points by name',
    ],
    [
      'a unit in a number',
      (f) => {
        f.parameters.repeat.min = '4mm';
      },
      'my.json parameters.repeat.min: it is "4mm"; a number',
    ],
    [
      'a later format',
      (f) => {
        f.format = 2;
      },
      'my.json: the file is of format 2, from a newer program; this program reads format 1; update it',
    ],
    [
      'an unknown symmetry',
      (f) => {
        f.symmetry = 'glid';
      },
      'one of "none", "mirror", "glide"',
    ],
    [
      'an unknown kind of leg',
      (f) => {
        f.legs[1].kind = 'curv';
      },
      'my.json legs[1].kind: it is "curv"; one of "straight"',
    ],
    [
      'a curve without control points',
      (f) => {
        f.legs[1].via = [];
      },
      'my.json legs[1].via: it is []; one or two control points',
    ],
    [
      'a part of another kind',
      (f) => {
        f.legs[0].width = 2;
      },
      'my.json legs[0].width: "width" is not known here',
    ],
    [
      'a point of one number',
      (f) => {
        f.points.start = [0];
      },
      'my.json points.start: it is [0]; [u, v]',
    ],
    [
      'an unknown point',
      (f) => {
        f.legs[1].to = 'tipp';
      },
      'my.json legs[1] "arm": there is no point "tipp"; the points are start, ',
    ],
    [
      'an unknown quantity',
      (f) => {
        f.points.tip[1] = '-widht / 2';
      },
      'my.json points.tip[1]: "widht" is not a known quantity; known here: repeat, width, core',
    ],
    [
      'a measure used before it is worked out',
      (f) => {
        f.measures = { a: 'b', b: 1, ...f.measures };
      },
      'my.json measures.a: "b" is not a known quantity',
    ],
    [
      'a name taken',
      (f) => {
        f.measures.width = 3;
      },
      'my.json measures.width: the name is taken',
    ],
    [
      'a name that is a function',
      (f) => {
        f.measures.sin = 3;
      },
      'my.json measures.sin: the name is taken',
    ],
    [
      'two legs of one name',
      (f) => {
        f.legs[1].name = 'strand';
      },
      'my.json legs[1]: another leg is named "strand"',
    ],
    [
      'no width',
      (f) => {
        delete f.parameters.width;
      },
      'my.json parameters.width: it is missing',
    ],
    [
      'a default out of range',
      (f) => {
        f.parameters.core.default = 0.9;
      },
      'my.json parameters.core: default 0.9 is not between min 0.1 and max 0.6',
    ],
    [
      'a smallest size above the default',
      (f) => {
        f.smallest.repeat = 9;
      },
      'my.json smallest.repeat: 9 is more than the default; at most 8',
    ],
    [
      'joins that miss',
      (f) => {
        f.points.base[1] = 0;
      },
      'my.json joins "base": it is 1.332 mm from "start" of the next unit',
    ],
    [
      'a join of a control point',
      (f) => {
        f.joins = { arm1: 'start' };
      },
      'my.json joins: no leg begins or ends at "arm1"',
    ],
    [
      'an unknown closing leg',
      (f) => {
        f.closing = ['holt'];
      },
      'my.json closing: there is no leg "holt"; the legs are strand, arm, dip, hold',
    ],
    [
      'an under-leg beneath a leg of other ends',
      (f) => {
        f.legs[2].beneath = 'strand';
      },
      'my.json legs[2] "dip" beneath: "strand" is no leg between "tip" and "base"',
    ],
    [
      'a closing leg that closes anyway',
      (f) => {
        f.closing = ['hold'];
      },
      'my.json closing: "hold" is worked only at the end',
    ],
    [
      'pieces',
      (f) => {
        f.joins = {};
      },
      'my.json legs: a row of it falls into pieces',
    ],
    [
      'a division by nothing',
      (f) => {
        f.points.tip[0] = '1 / (width - 8)';
      },
      'my.json point "tip": its arithmetic gives (Infinity',
    ],
    [
      'a leg without length',
      (f) => {
        f.points.held = [0, 'inner'];
      },
      'my.json leg "hold": it is 0.00 mm long',
    ],
    [
      'a claim of symmetry',
      (f) =>
        void Object.assign(f, {
          symmetry: 'mirror',
          joins: { base: 'held' },
          points: { ...f.points, base: ['length + hold', 'inner - hold * slope'] },
        }),
      'my.json symmetry: its holes to the left and right differ',
    ],
  ])('%s', async (_, edit, expected) => {
    expect((await mistakes(feather(edit))).join('\n')).toContain(expected);
  });

  test('all of them at once, each once', async () => {
    const file = feather((f) => {
      f.titel = 'x';
      f.halves = 'yes';
      f.legs[0].knid = 1;
      delete f.family;
    });
    expect(await mistakes(file)).toHaveLength(4);
    await expect(readStitch(file, 'my', 'my.json')).rejects.toThrow(/and 3 more mistakes in this file/);
  });

  test('text that is no JSON, with line and column', async () => {
    expect(await mistakes('{ "format": 1,\n  "title": }')).toEqual([
      'my.json line 2 column 12: a value is missing; files of the dictionary are JSON',
    ]);
    for (const source of ['', 'null', '[]', '7', '"text"', '{}'])
      expect((await mistakes(source)).length).toBeGreaterThan(0);
  });

  test.each([
    'constructor',
    '__proto__',
    'this',
    'width.constructor.constructor("return process")()',
    '9 ^ 9 ^ 9',
    `${'('.repeat(90)}width${')'.repeat(91)}`,
    '1'.repeat(500),
  ])('arithmetic that means harm: %s', async (hostile) => {
    const found = await checkStitchFile(
      feather((f) => {
        f.points.tip[0] = hostile;
      }),
      'my.json',
    );
    expect(found.length).toBeGreaterThan(0);
    for (const error of found) expect(error).toBeInstanceOf(InputError);
  });

  test('names that mean harm', async () => {
    const text = JSON.stringify(feather(() => {})).replace('"points":{', '"points":{"__proto__":[0,0],');
    expect((await mistakes(text)).join()).toContain('"__proto__" is not known here');
    const file = feather((f) => {
      f.points.constructor = [0, 0];
    });
    expect(await mistakes(file)).toEqual([]);
  });

  test('a file with a byte order mark is read as any other', async () => {
    expect(await mistakes(`\uFEFF${stitchFiles[0].text}`)).toEqual([]);
  });

  test('a file of absurd size, or nested without end, is refused', async () => {
    expect((await mistakes(' '.repeat(300_000)))[0]).toContain('too many');
    expect((await mistakes('['.repeat(190_000))).length).toBeGreaterThan(0);
  });
});

describe('finding a stitch', () => {
  test.each([
    ['feather', 'feather'],
    ['FEATHER', 'feather'],
    ['Double Feather', 'double-feather'],
    ['double_feather', 'double-feather'],
    [' lazy daisy ', 'lazy-daisy'],
    ['Briar', 'feather'],
    ['catch stitch', 'herringbone'],
  ])('%j is %s', (wanted, name) => {
    expect(findNamed(builtIn.stitches, wanted, 'stitch').name).toBe(name);
  });

  test.each([
    ['fether', 'feather'],
    ['heringbone', 'herringbone'],
    ['blankit', 'blanket'],
    ['Chevrun', 'chevron'],
    ['hering', 'herringbone'],
    ['daisy', 'lazy-daisy'],
    ['crete', 'cretan'],
  ])('%j is answered with %s', (wanted, nearest) => {
    expect(() => findNamed(builtIn.stitches, wanted, 'stitch')).toThrow(
      `stitch "${wanted}": there is no such stitch; did you mean "${nearest}"?`,
    );
  });

  test("a maker's own stitch comes before a built-in one of the same name", () => {
    const own = parseStitch(
      feather((f) => {
        f.title = 'My feather';
      }),
      'feather',
    );
    expect(findNamed(new Map([...builtIn.stitches, ['feather', own]]), 'feather', 'stitch')).toBe(own);
  });
});
