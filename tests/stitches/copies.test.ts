import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkOrnamentFile, checkStitchFile, readOrnament } from '../../src/stitches/check.js';
import { parseOrnament, parseStitch } from '../../src/stitches/parse.js';

/** A flower of as many straight petals as asked, and a spiral about its heart. */
const flower = {
  format: 1,
  title: 'Straight flower',
  otherNames: [],
  family: 'flower',
  for: 'Tests.',
  sources: ['our own'],
  parameters: {
    size: { title: 'Size', unit: 'mm', default: 10, min: 4, max: 30 },
    petals: { title: 'Petals', unit: 'count', default: 5, min: 3, max: 12 },
  },
  measures: { step: '360 / petals' },
  threads: ['petals', 'heart'],
  smallest: { size: 4 },
  points: {
    middle: [0, 0],
    tip: { count: 'petals', at: ['size / 2 * sin(i * step)', 'size / 2 * cos(i * step)'] },
    coil: { count: 'petals * 2', at: ['i * size / 60 * sin(i * 60)', 'i * size / 60 * cos(i * 60)'] },
    end: ['size / 4', 0],
  },
  legs: [
    {
      count: 'petals',
      legs: [
        { name: 'petal', kind: 'straight', from: 'middle', to: 'tip[i]' },
        // its own petal
        { name: 'back', kind: 'under', from: 'tip[i]', to: 'middle', beneath: 'petal' },
      ],
    },
    { name: 'coil', kind: 'curve', from: 'middle', through: ['coil[*]'], to: 'end', thread: 'heart' },
  ],
};
type Edited = typeof flower & Record<string, unknown>;
const edited = (edit: (file: Edited) => void): object => {
  const file = structuredClone(flower) as Edited;
  edit(file);
  return file;
};
const mistakes = async (file: object) =>
  (await checkOrnamentFile(file, 'my.json')).map(({ message }) => message);

describe('points and legs worked several times over', () => {
  test('are as many as the parameter asks, in the order written, evenly about the middle', () => {
    const ornament = parseOrnament(flower, 'flower');
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 12 }),
        fc.double({ min: 4, max: 30, noNaN: true }),
        (petals, size) => {
          const { legs, nodes } = ornament.build({ petals, size });
          const drawn = legs.filter(({ name }) => name.startsWith('petal['));
          const tips = drawn.map(({ to }) => [nodes[2 * to], nodes[2 * to + 1]]);
          const apart = tips.map(([x, y], i) =>
            Math.hypot(x - tips[(i + 1) % petals][0], y - tips[(i + 1) % petals][1]),
          );
          // side of the regular polygon, by any handbook of geometry: 2 R sin(pi / n)
          const side = size * Math.sin(Math.PI / petals);
          return (
            drawn.length === petals &&
            drawn.every((leg, i) => leg.name === `petal[${i}]`) &&
            apart.every((length) => Math.abs(length - side) < 1e-9)
          );
        },
      ),
    );
  });

  test('a curve led through points passes each of them', () => {
    const { legs } = parseOrnament(flower, 'flower').build({ petals: 4 });
    const { path } = legs.find(({ name }) => name === 'coil')!;
    const missed = Array.from({ length: 8 }, (_, i) => {
      const [x, y] = [(i * 10) / 60, (i * 10) / 60].map(
        (r, k) => r * (k ? Math.cos : Math.sin)((i * Math.PI) / 3),
      );
      let nearest = Infinity;
      for (let k = 0; k < path.length; k += 2)
        nearest = Math.min(nearest, Math.hypot(path[k] - x, path[k + 1] - y));
      return nearest;
    });
    expect(Math.max(...missed)).toBeLessThan(1e-9);
  });

  test('legs go to the thread they name, others to the first', () => {
    const ornament = parseOrnament(flower, 'flower');
    expect(ornament.threads).toEqual(['petals', 'heart']);
    expect(ornament.build({}).legs.map(({ thread }) => thread)).toEqual([...Array(10).fill(0), 1]);
  });

  test('a sound file is read; one of another kind is told what is missing', async () => {
    expect(await mistakes(flower)).toEqual([]);
    expect((await readOrnament(flower, 'flower')).title).toBe('Straight flower');
    expect((await checkStitchFile(flower, 'my.json')).map(({ message }) => message).join('\n')).toContain(
      'my.json joins: it is missing',
    );
  });

  test.each<[string, (file: Edited) => void, string]>([
    [
      'a copy that is not there',
      (f) => {
        f.points.tip.count = 4 as never;
      },
      'my.json legs[0].legs[0] "petal": there is no point "tip[4]"; the points are middle, tip[0] to tip[3], coil[0]',
    ],
    [
      'copies that depend on a length',
      (f) => {
        f.points.tip.count = 'size' as never;
      },
      'my.json points.tip.count: "size" is not a known quantity',
    ],
    [
      'copies without end',
      (f) => {
        f.points.tip.count = '10 ^ 9' as never;
      },
      'my.json points.tip.count: there are 1000000000 copies; 0 to 2000',
    ],
    [
      'a thread nobody named',
      (f) => {
        (f.legs[1] as Record<string, unknown>).thread = 'leaf';
      },
      'my.json legs[1] "coil" thread: there is no thread "leaf"; the threads are petals, heart',
    ],
    [
      'a leg among copies with a word too many',
      (f) => {
        Object.assign(f.legs[0].legs![0], { via: ['tip'] });
      },
      'my.json legs[0].legs[0].via: "via" is not known here',
    ],
    [
      'a curve with nothing to bend it',
      (f) => {
        delete (f.legs[1] as Record<string, unknown>).through;
      },
      'my.json legs[1] "coil": it has no point to bend by',
    ],
  ])('%s is told with its place', async (_, edit, message) => {
    expect((await mistakes(edited(edit))).join('\n')).toContain(message);
  });

  test('a count is a whole number', () => {
    expect(() => parseOrnament(flower, 'flower').build({ petals: 4.5 })).toThrow(
      'flower petals: 4.5 is no count; a whole number, 3 to 12',
    );
  });
});

test('a stitch in two threads hangs together in each of them', async () => {
  const laced = {
    format: 1,
    title: 'Laced',
    otherNames: [],
    family: 'line',
    for: 'Tests.',
    sources: ['our own'],
    parameters: {
      repeat: { title: 'Repeat', unit: 'mm', default: 6, min: 4, max: 12 },
      width: { title: 'Width', unit: 'mm', default: 3, min: 2, max: 6 },
    },
    symmetry: 'none',
    halves: false,
    corner: 'turn',
    growth: 'on',
    smallest: { repeat: 4, width: 2 },
    threads: ['running', 'lacing'],
    points: {
      come: [0, 0],
      rest: ['length / 2', 0],
      go: ['length', 0],
      up: ['length / 4', 'width / 2'],
      down: ['length * 3 / 4', '-width / 2'],
      upAgain: ['length * 5 / 4', 'width / 2'],
    },
    legs: [
      { name: 'stitch', kind: 'straight', from: 'come', to: 'rest' },
      { name: 'step', kind: 'under', from: 'rest', to: 'go' },
      { name: 'lace', kind: 'curve', from: 'up', through: ['rest', 'down'], to: 'upAgain', thread: 'lacing' },
    ],
    joins: { go: 'come', upAgain: 'up' },
  };
  const wrong = (file: object) =>
    checkStitchFile(file, 'my.json').then((all) => all.map(({ message }) => message));
  expect(await wrong(laced)).toEqual([]);
  expect(
    parseStitch(laced, 'laced')
      .build({})
      .legs.map(({ thread }) => thread),
  ).toEqual([0, 0, 1]);
  const { upAgain: _, ...joins } = laced.joins;
  expect((await wrong({ ...laced, joins })).join()).toContain('falls into pieces in its thread "lacing"');
  expect(await wrong({ ...laced, joins, detached: true })).toEqual([]);
});
