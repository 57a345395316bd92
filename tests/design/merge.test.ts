import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Block } from '../../src/block/block.js';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import type { Stop } from '../../src/design/design.js';
import { fewStops } from '../../src/design/few-stops.js';
import { threadKey } from '../../src/design/merge.js';
import { dress } from '../../src/dress.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { readDressing } from '../../src/formats/dressing-file.js';
import { builtIn } from '../stitches/dictionary.js';

const demo = (name: string) => readFileSync(new URL(`../../gallery/demo/${name}`, import.meta.url), 'utf8');
let block: Block;
let dressing: Dressing;
beforeAll(async () => {
  block = await readSvgBlock(demo('panel.svg'), 'panel.svg', {
    file: 'panel.svg',
    stops: null,
    snap: 0.3,
    through: [],
  });
  dressing = await readDressing(demo('panel.dressing.json'), 'panel.dressing.json');
});
const stopsOf = (stopPer: 'row' | 'thread' | 'all'): readonly Stop[] =>
  dress(block, { ...dressing, stopPer }, builtIn).design.stops;

const runs = (stops: readonly Stop[]): string[] =>
  stops.flatMap(({ runs: { xy, start } }) =>
    Array.from({ length: start.length - 1 }, (_, r) => xy.subarray(2 * start[r], 2 * start[r + 1]).join()),
  );

describe('color stops sewn together', () => {
  test('sew the same run segments, each as it was', () => {
    const rows = runs(stopsOf('row')).sort();
    expect(runs(stopsOf('thread')).sort()).toEqual(rows);
    expect(runs(stopsOf('all')).sort()).toEqual(rows);
  });

  test('for each thread are fewer, and hold one thread each', () => {
    const [rows, threads] = [stopsOf('row'), stopsOf('thread')];
    expect(threads.length).toBeLessThan(rows.length);
    const used = new Set(rows.map(({ thread }) => threadKey(thread)));
    expect(threads.length).toBeGreaterThanOrEqual(used.size);
    const ofRun = new Map(rows.flatMap((stop) => runs([stop]).map((run) => [run, threadKey(stop.thread)])));
    for (const stop of threads) {
      expect(new Set(runs([stop]).map((run) => ofRun.get(run)))).toEqual(new Set([threadKey(stop.thread)]));
    }
  });

  test('all in one are one', () => {
    expect(stopsOf('all')).toHaveLength(1);
  });

  test('sew what tucks under another before it, whatever is merged', () => {
    const seamAt = (stops: readonly Stop[]) => {
      const rows = new Map(stopsOf('row').flatMap((stop) => runs([stop]).map((run) => [run, stop.seams[0]])));
      return runs(stops).map((run) => rows.get(run)!);
    };
    for (const per of ['thread', 'all'] as const) {
      const order = seamAt(stopsOf(per));
      for (const { arms, through, onOutline } of block.map.junctions) {
        if (onOutline || through === null) continue;
        for (const { seam } of arms) {
          if (seam !== through) expect(order.lastIndexOf(seam)).toBeLessThan(order.indexOf(through));
        }
      }
    }
  });
});

describe('a thread that keeps several stops', () => {
  const kept = (stopPer: 'row' | 'thread' | 'all') => {
    const dressed = dress(block, { ...dressing, stopPer }, builtIn);
    return {
      stops: dressed.design.stops,
      told: dressed.findings.filter(({ code }) => code === 'stops-kept-apart'),
    };
  };

  test('is told with its stops, and only such a thread', () => {
    const { stops, told } = kept('thread');
    const used = new Map<string, number[]>();
    stops.forEach((stop, i) => {
      const key = threadKey(stop.thread);
      used.set(key, [...(used.get(key) ?? []), i + 1]);
    });
    const several = [...used.values()].filter((numbers) => numbers.length > 1);
    expect(several.length).toBeGreaterThan(0);
    expect(told.map(({ message }) => message.match(/\d+/g)!.map(Number).slice(1))).toEqual(several);
  });

  test('is no news where each row has a stop of its own, or all are one', () => {
    expect(kept('row').told).toEqual([]);
    expect(kept('all').told).toEqual([]);
  });
});

describe('as few stops as can be', () => {
  /** The fewest stops over all orders that are allowed, each tried. */
  const fewest = (kinds: readonly number[], earlier: readonly (readonly number[])[]): number => {
    let best = kinds.length;
    const go = (order: number[], stops: number) => {
      if (stops > best) return;
      if (order.length === kinds.length) {
        best = Math.min(best, stops);
        return;
      }
      for (let next = 0; next < kinds.length; next++) {
        if (order.includes(next) || !earlier[next].every((one) => order.includes(one))) continue;
        const isNew = order.length === 0 || kinds[order[order.length - 1]] !== kinds[next];
        go([...order, next], stops + (isNew ? 1 : 0));
      }
    };
    go([], 0);
    return best;
  };

  test('are found, all orders tried, with what has to be sewn before another kept before it', () => {
    const members = fc.array(fc.tuple(fc.integer({ min: 0, max: 2 }), fc.array(fc.nat(), { maxLength: 2 })), {
      minLength: 1,
      maxLength: 7,
    });
    fc.assert(
      fc.property(members, (all) => {
        const kinds = all.map(([kind]) => kind);
        const earlier = all.map(([, waits], i) => (i ? [...new Set(waits.map((one) => one % i))] : []));
        const stops = fewStops(kinds, earlier);
        expect(stops.length).toBe(fewest(kinds, earlier));
        const order = stops.flat();
        for (const [i, waits] of earlier.entries()) {
          for (const one of waits) expect(order.indexOf(one)).toBeLessThan(order.indexOf(i));
        }
      }),
    );
  });
});
