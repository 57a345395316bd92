import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkTreatmentFile } from '../../src/formats/treatment-file.js';
import { InputError } from '../../src/input-error.js';
import { checkOrnamentFile, checkStitchFile, readStitch } from '../../src/stitches/check.js';
import { findIfNamed } from '../../src/stitches/find-named.js';
import { parseStitch } from '../../src/stitches/parse.js';
import { dictionary, ornamentFiles, stitchFiles, treatmentFiles } from './dictionary.js';
import { layRow } from './lay-row.js';

type Check = (text: string, where: string) => Promise<InputError[]>;
const shelves: readonly { what: string; check: Check; files: typeof stitchFiles }[] = [
  { what: 'stitch', check: checkStitchFile, files: stitchFiles },
  { what: 'ornament', check: checkOrnamentFile, files: ornamentFiles },
  { what: 'treatment', check: checkTreatmentFile, files: treatmentFiles },
];
const textOf = (name: string) => stitchFiles.find((file) => file.name === name)!.text;

// biome-ignore lint/suspicious/noExplicitAny: files are edited here as a maker would, also wrongly
type Edited = any;
const fly = (edit: (file: Edited) => void): string => {
  const file = JSON.parse(textOf('fly'));
  edit(file);
  return JSON.stringify(file);
};
const mistakes = async (text: string, check: Check = checkStitchFile) =>
  (await check(text, 'my.json')).map(({ message }) => message);

/** Names that every object of the host knows. */
const hostNames = ['constructor', 'toString', 'valueOf', 'hasOwnProperty', 'isPrototypeOf', '__proto__'];
const deep = (open: string, close: string, levels: number) => open.repeat(levels) + close.repeat(levels);

describe.each(shelves)('a file that is no $what at all', ({ check, files }) => {
  test.each([
    ['nothing', ''],
    ['null', 'null'],
    ['a list', '[]'],
    ['a number', '7'],
    ['a text', '"stitch"'],
    ['an empty object', '{}'],
    ['a byte order mark alone', '\uFEFF'],
    ['UTF-16 read as if it were UTF-8', [...'{"format": 1}'].join('\0')],
    ['brackets without end', '['.repeat(190_000)],
    ['lists in lists', deep('[', ']', 90_000)],
    ['objects in objects', deep('{"a":', '}', 20_000).replace('}', '1}')],
    ['too many signs', ' '.repeat(1_000_000)],
    ['a title nested deeper than the stack', `{"format":1,"title":${deep('[', ']', 90_000)}}`],
    ['a format beyond all numbers', '{"format":1e999}'],
  ])('%s is told', async (_, text) => {
    const found = await check(text, 'my.json');
    expect(found.length).toBeGreaterThan(0);
    for (const error of found) {
      expect(error).toBeInstanceOf(InputError);
      expect(error.message).toMatch(/^my\.json.*; ./);
    }
  });

  test('any value at all is answered', async () => {
    await fc.assert(
      fc.asyncProperty(fc.json({ maxDepth: 5 }), async (text) => {
        const found = await check(text, 'my.json');
        return found.length > 0 && found.every((error) => error instanceof InputError);
      }),
      { numRuns: 40 },
    );
  });

  test('a sound one that says a name twice is told which, and on which line', async () => {
    const [{ text }] = files;
    const twice = text.replace('"format": 1,', '"format": 1,\n  "title": "Another",');
    const line = twice.slice(0, twice.lastIndexOf('"title"')).split('\n').length;
    const second = twice.split('\n').findIndex((one, i) => i > 3 && one.startsWith('  "title"')) + 1;
    expect(second).toBeGreaterThan(0);
    expect(line).toBeGreaterThanOrEqual(second);
    expect(await mistakes(twice, check)).toEqual([
      `my.json line ${second}: "title" is said twice in one object; say it once`,
    ]);
  });

  test('a text that could drive a terminal is refused', async () => {
    const record = { ...JSON.parse(files[0].text), title: 'Red \u001b[31m' };
    expect((await mistakes(JSON.stringify(record), check)).join()).toContain(
      '"Red \\u001b[31m" has a line end or a control character in it',
    );
  });
});

/** Every place of a value, as the keys that lead there. */
function placesIn(value: unknown): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return [[]];
  const keys = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value);
  return [[], ...keys.flatMap((key) => placesIn((value as Edited)[key]).map((rest) => [key, ...rest]))];
}

function withValueAt(value: Edited, [key, ...rest]: (string | number)[], put: unknown): unknown {
  if (key === undefined) return put;
  const changed = Array.isArray(value) ? [...value] : { ...value };
  changed[key] = withValueAt(value[key], rest, put);
  return changed;
}

const strange = fc.oneof(
  fc.constantFrom<unknown>(null, true, '', [], {}, [[]], [null], { toString: 1 }, { length: 3 }, 0, -1, 2.5),
  fc.constantFrom(1e6, -1e9, 1e308, 5e-324, Number.MAX_SAFE_INTEGER),
  fc.constantFrom(
    ...hostNames,
    'i',
    'length',
    'pi',
    '0 / 0',
    '1 / 0',
    '10 ^ 9',
    'sqrt(-1)',
    'tip[i]',
    'tip[*]',
  ),
  fc.constantFrom('width.constructor', 'width["a"]', 'min(1)(2)', 'width = 3', '🪡', '\u202E', '1mm'),
  fc.jsonValue({ maxDepth: 3 }),
);

describe.each(shelves)('a $what with one strange value in it', ({ check, files }) => {
  test('is still sound, or told where it is wrong', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.nat(), strange, async (which, where, value) => {
        const record: unknown = JSON.parse(files[which % files.length].text);
        const places = placesIn(record);
        const changed = withValueAt(record, places[where % places.length], value);
        const found = await check(JSON.stringify(changed), 'my.json');
        return found.every(
          (error) => error instanceof InputError && error.wrong !== '' && error.where.startsWith('my.json'),
        );
      }),
      { numRuns: 50 },
    );
  });

  test('that is not even of the right kind is told with its very place', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.nat(), async (which, where) => {
        const record = JSON.parse(files[which % files.length].text);
        const keys = Object.keys(record).filter((key) => key !== '$schema');
        const key = keys[where % keys.length];
        const found = await mistakes(JSON.stringify({ ...record, [key]: { strange: [1] } }), check);
        return found.some((message) => message.includes(key));
      }),
      { numRuns: 40 },
    );
  });
});

/** Changes as a slip of the hand makes them, anywhere in a file. */
const change = fc.tuple(
  fc.nat(),
  fc.oneof(
    strange.map((value) => ({ what: 'put' as const, value })),
    fc
      .constantFrom('left out' as const, 'misspelled' as const, 'twice' as const)
      .map((what) => ({ what, value: 0 })),
  ),
);
function changed(
  record: Edited,
  [where, { what, value }]: [number, { what: string; value: unknown }],
): Edited {
  const places = placesIn(record).filter((place) => place.length > 0);
  if (!places.length) return record;
  const place = places[where % places.length];
  if (what === 'put') return withValueAt(record, place, value);
  const [parent, key] = [place.slice(0, -1), place[place.length - 1]];
  let at = record;
  for (const step of parent) at = at[step];
  if (Array.isArray(at)) {
    const rest = at.toSpliced(
      Number(key),
      1,
      ...(what === 'twice' ? [at[key as number], at[key as number]] : []),
    );
    return withValueAt(record, parent, rest);
  }
  const { [key]: one, ...rest } = at;
  return withValueAt(record, parent, what === 'misspelled' ? { ...rest, [`${key}x`]: one } : rest);
}

describe.each(shelves)('a $what with several slips in it', ({ check, files }) => {
  test('is still sound, or told the file, a place and what would be right, each mistake once', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.array(change, { minLength: 1, maxLength: 6 }), async (which, changes) => {
        const record = changes.reduce(changed, JSON.parse(files[which % files.length].text));
        const found = await check(JSON.stringify(record), 'my.json');
        const told = found.map(({ message }) => message);
        return (
          found.every((error) => error instanceof InputError && error.right !== '' && error.wrong !== '') &&
          told.every((message) => /^my\.json(: | \S)/.test(message)) &&
          new Set(told).size === told.length &&
          told.length <= 21
        );
      }),
      { numRuns: 150 },
    );
  });

  test('tells a word misspelled at the top whatever else is wrong', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.array(change, { maxLength: 2 }), async (which, changes) => {
        const record = changes.reduce(changed, JSON.parse(files[which % files.length].text));
        if (typeof record !== 'object' || record === null || Array.isArray(record)) return true;
        if (record.format > 1) return true;
        const found = await mistakes(JSON.stringify({ famly: 1, ...record }), check);
        // mistakes are told in the order of the file
        return found.slice(0, 3).some((message) => message.includes('famly'));
      }),
      { numRuns: 60 },
    );
  });
});

describe('names that every object has', () => {
  const share = { title: 'Share', unit: 'share', default: 0.5, min: 0.1, max: 0.9 };
  test.each(hostNames.filter((name) => name !== '__proto__'))(
    '"%s" is a name like any other',
    async (name) => {
      const text = fly((file) => {
        file.parameters[name] = share;
        file.points[name] = [0, `width * ${name}`];
        file.seats = { ...file.seats, [name]: name };
      });
      expect(await mistakes(text)).toEqual([]);
      const stitch = parseStitch(text, 'my');
      const { width } = Object.fromEntries(stitch.parameters.map((one) => [one.name, one.default]));
      const at = (values: Record<string, number>) =>
        stitch.build(values).seats.find((seat) => seat.name === name)!.v;
      expect(at({})).toBeCloseTo(width * 0.5, 12);
      expect(at({ [name]: 0.25 })).toBeCloseTo(width * 0.25, 12);
      expect(() => stitch.build({ [name]: 2 })).toThrow(/out of range; 0.1 to 0.9/);
    },
  );

  test.each(hostNames)('nothing in the dictionary goes by "%s", and no leg is of that kind', async (name) => {
    expect(findIfNamed(new Map(dictionary.map((one) => [one.name, one])), name)).toBeUndefined();
    const kind = await mistakes(
      fly((file) => {
        file.legs[0].kind = name;
      }),
    );
    expect(kind.join()).toContain(`legs[0].kind: it is "${name}"; one of "straight"`);
    expect(({} as Edited).polluted).toBeUndefined();
  });
});

describe('arithmetic gone astray', () => {
  const place = (source: string) =>
    mistakes(
      fly((file) => {
        file.seats.far = [source, 0];
      }),
    );
  test.each(['0 / 0', '1 / 0', '-1 / 0', 'sqrt(0 - width)', '10 ^ 300 * 10 ^ 300', '501', '9 ^ 9 ^ 9'])(
    '%s is no place',
    async (source) => {
      expect((await place(source)).join()).toMatch(/"far": its arithmetic gives/);
    },
  );

  test.each(['-501', '1'.repeat(190), `1${'+ 1'.repeat(66)}`])('%s is answered', async (source) => {
    expect((await place(source)).length).toBeGreaterThan(0);
  });

  test('measures use only those before them, not themselves nor one another', async () => {
    const found = await mistakes(
      fly((file) => {
        file.measures = { own: 'own + 1', first: 'second', second: 'first' };
      }),
    );
    expect(found.join('\n')).toMatch(/measures\.own: "own" is not a known quantity/);
    expect(found.join('\n')).toMatch(/measures\.first: "second" is not a known quantity/);
    expect(found.join('\n')).not.toMatch(/measures\.second/);
  });

  test('parameters may range over negative numbers, to their very ends', async () => {
    for (const [min, usual, max] of [
      [-30, 0, 30],
      [-30, -20, -10],
    ]) {
      const text = fly((file) => {
        file.parameters.lean = { title: 'Lean', unit: 'degree', default: usual, min, max };
      });
      expect(await mistakes(text)).toEqual([]);
      expect(() => parseStitch(text, 'my').build({ lean: min - 0.001 })).toThrow(/out of range/);
      expect(() => parseStitch(text, 'my').build({ lean: max + 0.001 })).toThrow(/out of range/);
    }
  });
});

describe('copies', () => {
  const counted = (min: number, usual: number, max: number) => (file: Edited) => {
    file.parameters.rays = { title: 'Rays', unit: 'count', default: usual, min, max };
    file.points.ray = { count: 'rays', at: ['i', 0] };
  };
  test.each<[string, (file: Edited) => void, string]>([
    ['fractions of a copy', counted(1, 2.5, 4), '2.5 is no count; a whole number, 1 to 4'],
    [
      'fewer than none',
      counted(-3, 2, 4),
      'points.ray.count: there are -3 copies (at {"rays":-3}); 0 to 2000',
    ],
    [
      'no number of them',
      (f) => {
        counted(1, 2, 4)(f);
        f.points.ray.count = '0 / 0';
      },
      'there are NaN copies',
    ],
    [
      'many times many points',
      (f) => {
        for (let k = 0; k < 300; k++) f.points[`p${k}`] = { count: '2000', at: ['i / 10', 'width'] };
      },
      'points.p1.count: with those before it there are 4000 copies; at most 2000',
    ],
    [
      'many times many legs',
      (f) => {
        const legs = Array.from({ length: 200 }, (_, k) => ({
          name: `leg${k}`,
          kind: 'straight',
          from: f.legs[0].from,
          to: f.legs[0].to,
        }));
        f.legs.push({ count: '2000', legs });
      },
      'with those before it there are 400000 copies',
    ],
    [
      'legs led through them without end',
      (f) => {
        f.points.q = { count: '2000', at: ['i / 10', 0] };
        const { from, to } = f.legs[0];
        const leg = { name: 'far', kind: 'curve', from, through: Array(200).fill('q[*]'), to };
        f.legs.push({ count: '1000', legs: [leg] });
      },
      'with all copies legs are led through too many points; at most 2000',
    ],
  ])('%s are refused at once', async (_, edit, message) => {
    expect((await mistakes(fly(edit))).join('\n')).toContain(message);
  });

  test('a mistake in what is copied is told once, not once a copy', async () => {
    const found = await mistakes(
      fly((f) => {
        f.points.ray = { count: '12', at: ['widht', 'heigth'] };
      }),
    );
    expect(found).toHaveLength(2);
    await expect(
      readStitch(
        fly((f) => Object.assign(f.points, { ray: { count: '12', at: ['widht', 0] } })),
        'my',
      ),
    ).rejects.toThrow(/"widht" is not a known quantity; known here: [^(]*$/);
  });

  test('a point and a leg of like names are counted apart', async () => {
    const text = fly((f) => {
      const { from, to } = f.legs[0];
      f.points['leg ray'] = { count: '2', at: ['1 + i', 1] };
      const legs = [{ name: 'ray', kind: 'curve', from, through: ['leg ray[*]'], to }];
      f.legs.push({ count: '3', legs });
      f.detached = true;
      f.symmetry = 'none';
    });
    expect((await mistakes(text)).join()).not.toContain('there is no point');
  });
});

/** Values over everything a build takes. */
const anyValues = ({ parameters }: (typeof dictionary)[number]) =>
  fc.record(
    Object.fromEntries(
      parameters.map(({ name, unit, min, max }) => [
        name,
        unit === 'count'
          ? fc.integer({ min, max })
          : fc.double({ min, max, noNaN: true, noDefaultInfinity: true }),
      ]),
    ),
  ) as fc.Arbitrary<Record<string, number>>;

describe.each(dictionary.map((stitch) => ({ name: stitch.name, stitch })))(
  '$name at any size it declares',
  ({ stitch }) => {
    const glide = stitch.symmetry === 'glide';
    const always = (holds: (values: Record<string, number>) => boolean) =>
      fc.assert(fc.property(anyValues(stitch), holds), { numRuns: 12 });
    /** Ends of visible legs in a row, in no order, each as often as it is there. */
    const places = (
      values: Record<string, number>,
      count: number,
      move: (u: number, v: number) => number[],
    ) =>
      layRow({ ...stitch.build(values), closing: [], ending: [] }, glide, count)
        .filter(({ kind }) => kind !== 'under')
        .map(({ kind, xy, size }) => {
          const ends = [xy[0], xy[xy.length - 1]].map(([u, v]) => move(u, v).map(rounded).join(' '));
          return [kind, rounded(size), ...ends.sort()].join(' ');
        })
        .sort();
    const rounded = (value: number) => (Math.round(value * 1e5) / 1e5 + 0).toFixed(4);

    test('lies inside the width across that it declares', () => {
      always((values) => {
        const { reach, legs, ending } = stitch.build(values);
        const finite = [...legs, ...ending].every((leg) => leg.path.every(Number.isFinite));
        // Blanket and its kin are as wide as their arms are long; their edge swells a little beyond the line.
        const { left, right } = reach;
        const toOneHand = !glide && left > 3 * right;
        return finite && (toOneHand ? left : left + right) <= values.width * 1.03;
      });
    });

    if (glide)
      test('is a true glide: half a repeat on, left and right exchanged', () => {
        always((values) => {
          const step = stitch.build(values).length;
          const long = new Set(places(values, 4, (u, v) => [u, v]));
          return places(values, 3, (u, v) => [u + step, -v]).every((place) => long.has(place));
        });
      });

    if (stitch.symmetry === 'mirror')
      test('is a true mirror: left and right exchanged, it is the same', () => {
        always((values) => {
          const here = new Set(places(values, 2, (u, v) => [u, v]));
          return places(values, 2, (u, v) => [u, -v]).every((place) => here.has(place));
        });
      });
  },
);
