import { describe, expect, test } from 'vitest';
import { checkTreatmentFile } from '../../src/formats/treatment-file.js';
import { checkOrnamentFile, checkStitchFile } from '../../src/stitches/check.js';
import { ornamentFiles, stitchFiles, treatmentFiles } from './dictionary.js';

// biome-ignore lint/suspicious/noExplicitAny: files are edited here as a maker would, also wrongly
type Edited = any;
const edited = (files: typeof stitchFiles, name: string, edit: (file: Edited) => void): string => {
  const file = JSON.parse(files.find((one) => one.name === name)!.text);
  edit(file);
  const text = JSON.stringify(file);
  return text.length > 100_000 ? text : JSON.stringify(file, null, 1);
};
const messages = async (check: typeof checkTreatmentFile, text: string) =>
  (await check(text, 'my.json')).map(({ where, wrong }) => `${where}: ${wrong}`);
const feather = (edit: (file: Edited) => void) =>
  messages(checkStitchFile, edited(stitchFiles, 'feather', edit));
const daisy = (edit: (file: Edited) => void) =>
  messages(checkOrnamentFile, edited(ornamentFiles, 'daisy', edit));
const herringbone = (edit: (file: Edited) => void) =>
  messages(checkTreatmentFile, edited(treatmentFiles, 'herringbone-knots-daisies', edit));

describe('all that is wrong in a file is told in one go, in the order of the file', () => {
  test('what a word misspelled has beside it: names, arithmetic, sizes', async () => {
    expect(
      await feather((f) => {
        f.smallest.width = 99;
        f.points.tip[0] = 'widht';
        f.legs[0].knid = 3;
        f.legs[1].to = 'nowhere';
        f.titel = 'x';
        f.closing = ['nix'];
      }),
    ).toEqual([
      'my.json smallest.width: 99 is more than the default',
      expect.stringContaining('my.json points.tip[0]: "widht" is not a known quantity'),
      expect.stringContaining('my.json legs[0].knid: "knid" is not known here'),
      expect.stringContaining('my.json legs[1] "arm": there is no point "nowhere"'),
      expect.stringContaining('my.json titel: "titel" is not known here'),
      expect.stringContaining('my.json closing: there is no leg "nix"'),
    ]);
  });

  test('arithmetic is worked out beside a leg that cannot be read', async () => {
    expect(
      await feather((f) => {
        f.legs[3].from = 7;
        f.points.tip[0] = '1 / (width - width)';
        f.points.held[1] = '0 / 0';
      }),
    ).toEqual([
      expect.stringContaining('point "held": its arithmetic gives'),
      expect.stringContaining('point "tip": its arithmetic gives (Infinity'),
      'my.json legs[3].from: it is 7',
    ]);
  });

  test('units are looked at in spite of words that have nothing to do with them', async () => {
    expect(
      await feather((f) => {
        f.halves = 'yes';
        f.joins = {};
      }),
    ).toEqual([
      'my.json halves: it is "yes"',
      expect.stringContaining('my.json legs: a row of it falls into pieces'),
    ]);
  });

  test('commas and comments that JSON does not have hide nothing behind them', async () => {
    const text = edited(stitchFiles, 'feather', (f) => {
      f.famly = 'x';
    });
    const found = await messages(
      checkStitchFile,
      text.replace('"format": 1,', '// mine\n"format": 1,').replace(/\}\s*$/, ',}'),
    );
    expect(found).toEqual([
      expect.stringMatching(/^my\.json line 3 column 2: JSON has no comments/),
      expect.stringMatching(/^my\.json line \d+ column \d+: a comma stands before the end/),
      expect.stringContaining('famly: "famly" is not known here'),
    ]);
  });

  test('a name said twice, and signs that could drive a terminal, hide nothing either', async () => {
    const text = edited(stitchFiles, 'feather', (f) => {
      f.title = 'Red \u001b[31m';
      f.halves = 3;
    });
    const found = await messages(checkStitchFile, text.replace('"format": 1,', '"format": 1, "format": 1,'));
    expect(found.join('\n')).toMatch(
      /line 3: "format" is said twice[\s\S]*title: "Red .* has a line end[\s\S]*halves: it is 3/,
    );
  });

  test('every name that no point, parameter or measure can have', async () => {
    const found = await feather((f) => {
      for (const section of ['points', 'parameters', 'measures', 'joins']) {
        Object.assign(f[section], { '': null, '9th': null, 'with.dot': null });
      }
    });
    expect(found.filter((message) => message.endsWith('is not known here'))).toHaveLength(12);
    expect(found).toHaveLength(12);
  });

  test('in a treatment: threads and rows that are not there beside a word misspelled', async () => {
    expect(
      await herringbone((f) => {
        f.titel = 1;
        f.threads[0].hex = 'red';
        f.rows[0].thread = 9;
        f.rows[0].colour = 'red';
        f.accents[0].row = 5;
        f.accents[1].thread = 'x';
      }),
    ).toEqual([
      expect.stringContaining('threads[0].hex is "red", not a color'),
      expect.stringMatching(/^my.json: rows\[0\].thread is 9, but threads has \d in it/),
      expect.stringContaining('rows[0].colour is not known here'),
      'my.json: accents[0].row is 5, but rows has 1 in it, counted from 0',
      expect.stringContaining('accents[1].thread is "x", not a whole number'),
      expect.stringContaining('titel is not known here'),
    ]);
  });
});

describe('what only follows from a mistake is not told beside it', () => {
  test.each<[string, (file: Edited) => void, string[]]>([
    [
      'legs to a point that cannot be read',
      (f) => {
        f.points.tip = 'x';
      },
      ['my.json points.tip: it is "x"'],
    ],
    [
      'arithmetic on a parameter that cannot be read',
      (f) => {
        f.parameters.core.min = '1mm';
      },
      ['my.json parameters.core.min: it is "1mm"'],
    ],
    [
      'everything that stands on parameters',
      (f) => {
        delete f.parameters;
      },
      ['my.json parameters: it is missing'],
    ],
    [
      'everything that stands on points',
      (f) => {
        f.points = [];
      },
      ['my.json points: it is []'],
    ],
    [
      'everything that stands on legs',
      (f) => {
        f.legs = 'all';
      },
      ['my.json legs: it is "all"'],
    ],
    [
      'pieces, where a leg between them cannot be read',
      (f) => {
        f.legs[0].from = 3;
      },
      ['my.json legs[0].from: it is 3'],
    ],
    [
      'an under-leg beneath a leg that leads nowhere',
      (f) => {
        f.legs[1].to = 'nowhere';
      },
      [expect.stringContaining('legs[1] "arm": there is no point "nowhere"')],
    ],
    [
      'half a repeat or a whole one',
      (f) => {
        f.symmetry = 'glid';
      },
      ['my.json symmetry: it is "glid"'],
    ],
  ])('%s', async (_, edit, expected) => {
    expect(await feather(edit)).toEqual(expected);
  });

  test('copies of which it is not known how many there are', async () => {
    expect(
      await daisy((f) => {
        f.parameters.petals.min = 'x';
      }),
    ).toEqual(['my.json parameters.petals.min: it is "x"']);
    const count = await daisy((f) => {
      const [name] = Object.entries<Edited>(f.points).find(([, point]) => point.count !== undefined)!;
      f.points[name].count = 'petls';
    });
    expect(count).toHaveLength(1);
    expect(count[0]).toContain('"petls" is not a known quantity');
  });
});

test('of very many mistakes the first are told, and how many more there are', async () => {
  const found = await feather((f) => {
    for (let k = 0; k < 15_000; k++) f[`k${k}`] = 1;
  });
  expect(found).toHaveLength(21);
  expect(found[20]).toBe('my.json: and 14980 more mistakes');
});

test.each([
  ['stitch', checkStitchFile],
  ['ornament', checkOrnamentFile],
  ['treatment', checkTreatmentFile],
])('what is no object is told what a %s is', async (kind, check) => {
  for (const [text, is] of [
    ['null', 'null'],
    ['[]', 'a list in brackets'],
    ['"x"', 'a text'],
    ['7', 'a number'],
  ]) {
    const [error, ...more] = await check(text, 'my.json');
    expect(more).toEqual([]);
    expect(error.message).toMatch(
      new RegExp(
        `^my\\.json: it is ${is.replace(/[[\]]/g, '.')}; it should be an object with "format", .*${kind}$`,
      ),
    );
  }
});
