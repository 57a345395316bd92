import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { referenceToPatch } from '../src/asked/fabrics.js';
import { readSvgBlock } from '../src/block/read-drawing.js';
import { contrast } from '../src/color/contrast.js';
import { type Difference, loadDifference } from '../src/color/difference.js';
import { type Dressed, dress } from '../src/dress.js';
import type { Dressing, ThreadChoice } from '../src/formats/dressing.js';
import { readStash } from '../src/formats/stash.js';
import { mixDressing } from '../src/harmony/mix.js';
import { defaultDressing } from '../src/plan.js';
import { threadsFromStash } from '../src/stash-threads.js';
import { builtIn } from './stitches/dictionary.js';

const demo = (name: string) => readFileSync(new URL(`../gallery/demo/${name}`, import.meta.url), 'utf8');
const source = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
const named = (name: string, hex: string, weight = 'No. 40'): ThreadChoice => ({ name, hex, weight });

let difference: Difference;
let stash: readonly ThreadChoice[];
let mixed: Dressed;
beforeAll(async () => {
  difference = await loadDifference();
  stash = await readStash(demo('stash.csv'), 'stash.csv');
  const block = await readSvgBlock(demo('panel.svg'), 'panel.svg', source);
  const plain = defaultDressing(block.map, { source, dictionary: builtIn, seams: [] });
  const { dressing } = mixDressing(block.map, plain, builtIn, { seed: 5, threads: 3, isNew: true });
  mixed = dress(block, dressing, builtIn);
});

/** A panel of two patches with one seam between them, in one stitch. */
async function panel(left: string, right: string, more: Partial<Dressing> = {}): Promise<Dressed> {
  const block = await readSvgBlock(
    `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">
      <rect width="30" height="60" fill="${left}"/><rect x="30" width="30" height="60" fill="${right}"/></svg>`,
    'panel.svg',
    source,
  );
  const dressing = defaultDressing(block.map, { source, dictionary: builtIn, stitch: 'feather' });
  return dress(block, { ...dressing, ...more }, builtIn);
}
const chosenFor = (dressed: Dressed, ...from: ThreadChoice[]) =>
  threadsFromStash(dressed, from, {}, difference).plans.map(({ thread }) => thread.name);

/** Threads of the new color stops, in the order of the machine, once the choice is sewn. */
const sewnThreads = (dressing: Dressing): ThreadChoice[] =>
  dress(mixed.block, dressing, builtIn).design.stops.map(({ thread }) => thread as ThreadChoice);
const changesIn = (threads: readonly ThreadChoice[]) =>
  threads.filter(({ name }, i) => i > 0 && name !== threads[i - 1].name).length;

describe('threads from a stash', () => {
  it('are seen where they are sewn: light on dark cloth, dark on light', async () => {
    const threads = [named('Soot', '#201c1c'), named('Chalk', '#fbfaf5')];
    expect(chosenFor(await panel('#202030', '#301818'), ...threads)).toEqual(['Chalk']);
    expect(chosenFor(await panel('#fdf6e3', '#e8e8f0'), ...threads)).toEqual(['Soot']);
  });

  it('may melt into one side, but not into both', async () => {
    const dressed = await panel('#202030', '#585858');
    const [both, one] = [named('Charcoal', '#3a3a42'), named('Ink', '#252535')];
    const ratios = [both, one].map(({ hex }) => ['#202030', '#585858'].map((on) => contrast(hex, on) >= 1.6));
    expect(ratios).toEqual([
      [false, false],
      [false, true],
    ]);
    expect(chosenFor(dressed, both, one)).toEqual(['Ink']);
  });

  it('keep the weight that is asked for, but on a busy print, which takes a heavier one', async () => {
    const dressed = await panel('#fdf6e3', '#fdf6e3');
    const threads = [named('Ink', '#1d2742'), named('Ink, thick', '#1d2742', 'No. 12')];
    expect(chosenFor(dressed, ...threads)).toEqual(['Ink']);
    const patch = referenceToPatch(dressed.block.map.patches[0]);
    const fabrics = [{ patch, colors: [{ hex: '#fdf6e3', share: 1 }], busyness: 0.9 }];
    expect(chosenFor(await panel('#fdf6e3', '#fdf6e3', { fabrics }), ...threads)).toEqual(['Ink, thick']);
  });

  it('dress the whole block, every stop of it', () => {
    const { dressing, plans } = threadsFromStash(mixed, stash, {}, difference);
    const names = new Set(stash.map(({ name }) => name));
    expect(sewnThreads(dressing).filter(({ name }) => !names.has(name))).toEqual([]);
    expect(plans.length).toBeGreaterThan(10);
  });

  it('are seen at least as well as those that the block had', () => {
    const lost = (threads: readonly (readonly [ThreadChoice, readonly string[]])[]) =>
      threads.filter(([{ hex }, fabrics]) => fabrics.every((fabric) => contrast(hex, fabric) < 1.6)).length;
    const withFabrics = (dressed: Dressed) =>
      dressed.lines.flatMap(({ fit, layers }) => {
        const sides = typeof fit.seam === 'number' ? dressed.block.map.seams[fit.seam - 1].sides : [];
        return sides.flatMap(({ left, right }) =>
          layers.map(
            ({ thread }) =>
              [
                thread,
                [left, right].flatMap((id) => dressed.block.map.patches[id! - 1].fabric ?? []),
              ] as const,
          ),
        );
      });
    const { dressing } = threadsFromStash(mixed, stash, {}, difference);
    const after = dress(mixed.block, dressing, builtIn);
    expect(lost(withFabrics(after))).toBeLessThanOrEqual(lost(withFabrics(mixed)));
  });

  it.each([1, 3])('of a palette of %s are no more than that, as sewn', (palette) => {
    const { dressing, threads } = threadsFromStash(mixed, stash, { palette }, difference);
    expect(new Set(sewnThreads(dressing).map(({ name }) => name)).size).toBe(threads);
    expect(threads).toBeLessThanOrEqual(palette);
  });

  it.each([0, 4])('are changed no more than %s times, as sewn', (changes) => {
    const choice = threadsFromStash(mixed, stash, { changes }, difference);
    expect(changesIn(sewnThreads(choice.dressing))).toBe(choice.changes);
    expect(choice.changes).toBeLessThanOrEqual(changes);
  });

  it.each([
    ['thread', undefined],
    ['thread', 3],
    ['all', undefined],
  ] as const)(
    'are changed as often as told where each %s has a color stop, at most %s times',
    (stopPer, changes) => {
      const merged = { ...mixed, dressing: { ...mixed.dressing, stopPer } };
      const choice = threadsFromStash(merged, stash, { changes }, difference);
      const threads = sewnThreads(choice.dressing);
      expect(changesIn(threads)).toBe(choice.changes);
      expect(choice.changes).toBeLessThanOrEqual(changes ?? 99);
      if (stopPer === 'all') expect([choice.threads, choice.changes]).toEqual([1, 0]);
      else expect(choice.changes).toBeGreaterThan(0);
    },
    60_000,
  );

  it('keep apart what the dressing has in two threads of one treatment', () => {
    const { plans } = threadsFromStash(mixed, stash, {}, difference);
    const seams = plans.flatMap(({ sewn: [{ line }], thread }) =>
      line === null ? [] : [[line, thread.name]],
    );
    const twice = seams.filter(
      ([line, name], i) => seams.findIndex(([a, b]) => a === line && b === name) < i,
    );
    expect(twice).toEqual([]);
  });
});
