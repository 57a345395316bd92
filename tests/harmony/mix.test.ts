import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import { largestMeeting, meetings } from '../../src/block/meetings.js';
import type { SeamMap } from '../../src/block/seam-map.js';
import { referenceTo } from '../../src/fit/seam-reference.js';
import type { BlockSource, Dressing, Treatment } from '../../src/formats/dressing.js';
import { writeDressing } from '../../src/formats/dressing-text.js';
import { insideRings } from '../../src/geometry/area.js';
import { polylineLength } from '../../src/geometry/polyline.js';
import { type MixOptions, mixDressing } from '../../src/harmony/mix.js';
import { measured } from '../../src/harmony/offer.js';
import { PALETTE } from '../../src/harmony/palette.js';
import { InputError } from '../../src/input-error.js';
import { defaultDressing } from '../../src/plan.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { cutBlock } from '../bench/many-seams.js';
import { builtIn } from '../stitches/dictionary.js';

const source: BlockSource = { file: 'block.svg', stops: null, snap: 0.3, through: [] };
const block = (seed: number, size = 180): SeamMap => buildSeamMap(cutBlock(size, 70, seed)).map;
const bare = (map: SeamMap): Dressing => defaultDressing(map, { source, dictionary: builtIn, seams: [] });
const mix = (map: SeamMap, options: Partial<MixOptions> = {}, base = bare(map), dictionary = builtIn) =>
  mixDressing(map, base, dictionary, { seed: 1, threads: 1, ...options });
const stitchesOf = ({ rows }: Treatment) => new Set(rows.map(({ stitch }) => stitch));
const onlyStitches = (...names: string[]): Dictionary => ({
  ...builtIn,
  stitches: new Map(names.map((name) => [name, builtIn.stitches.get(name)!])),
  treatments: new Map(),
});
const seeds = fc.integer({ min: 1, max: 500 });
const few = { numRuns: 15 };

/** Pairs of treatments that meet and share a stitch. */
function alike(map: SeamMap, { treatments }: Dressing): string[] {
  const meets = meetings(map);
  return treatments.flatMap((a) =>
    treatments
      .filter((b) => meets.get(a.seam.id)!.has(b.seam.id) && a.seam.id < b.seam.id)
      .filter((b) => [...stitchesOf(a)].some((stitch) => stitchesOf(b).has(stitch)))
      .map((b) => `${a.seam.id} and ${b.seam.id}`),
  );
}

/** Spearman's rank correlation. */
function rankCorrelation(xs: readonly number[], ys: readonly number[]): number {
  const ranks = (values: readonly number[]) => {
    const sorted = [...values].sort((a, b) => a - b);
    return values.map((value) => (sorted.indexOf(value) + sorted.lastIndexOf(value)) / 2);
  };
  const [p, q] = [ranks(xs), ranks(ys)];
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  const [mp, mq] = [mean(p), mean(q)];
  const sum = (value: (i: number) => number) => p.reduce((all, _, i) => all + value(i), 0);
  return (
    sum((i) => (p[i] - mp) * (q[i] - mq)) /
    Math.sqrt(sum((i) => (p[i] - mp) ** 2) * sum((i) => (q[i] - mq) ** 2))
  );
}

describe('a mixed block', () => {
  test('dresses every seam, no two that meet with the same stitch, and says why for each', () => {
    fc.assert(
      fc.property(seeds, seeds, (blockSeed, seed) => {
        const map = block(blockSeed);
        const { dressing, why, findings } = mix(map, { seed });
        expect(dressing.treatments.map(({ seam }) => seam.id)).toEqual(map.seams.map(({ id }) => id));
        expect(alike(map, dressing)).toEqual([]);
        expect(findings).toEqual([]);
        expect([...why.keys()]).toEqual(map.seams.map(({ id }) => id));
        expect([...why.values()].filter((phrase) => !/mm/.test(phrase))).toEqual([]);
      }),
      few,
    );
  });

  test('is the same, byte for byte, with the same seed, and another with another', () => {
    const map = block(7);
    const text = (seed: number) => writeDressing(mix(map, { seed, threads: 3 }).dressing);
    expect(text(5)).toBe(text(5));
    expect(new Set([1, 2, 3, 4, 5].map(text)).size).toBe(5);
  });

  test('has as many stitches as meet in one point, at least', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = block(seed);
        const { dressing } = mix(map, { seed });
        const used = new Set(dressing.treatments.flatMap((treatment) => [...stitchesOf(treatment)]));
        const ids = map.seams.map(({ id }) => id);
        expect(used.size).toBeGreaterThanOrEqual(largestMeeting(map, ids));
      }),
      few,
    );
  });

  test('has wide stitches on long seams and small ones on short', () => {
    const correlations = [1, 2, 3, 4, 5, 6].map((seed) => {
      const map = block(seed, 300);
      const { treatments } = mix(map, { seed }).dressing;
      return rankCorrelation(
        map.seams.map(({ points }) => polylineLength(points)),
        treatments.map((treatment) => measured(treatment, builtIn).width),
      );
    });
    expect(Math.min(...correlations)).toBeGreaterThan(0.5);
    // the measure itself: order alone counts
    expect(rankCorrelation([1, 2, 3, 9], [2, 30, 31, 32])).toBeCloseTo(1);
    expect(rankCorrelation([1, 2, 3], [3, 2, 1])).toBeCloseTo(-1);
  });

  test('spreads the families, and accents over some of the seams', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { treatments } = mix(block(seed, 260), { seed }).dressing;
        const families = treatments.map(({ rows }) => builtIn.stitches.get(rows[0].stitch)!.family);
        const most = Math.max(...families.map((one) => families.filter((other) => other === one).length));
        expect(new Set(families).size).toBeGreaterThanOrEqual(5);
        expect(most).toBeLessThanOrEqual(0.4 * families.length);
        const rich = treatments.filter(({ accents = [] }) => accents.length > 0).length / treatments.length;
        expect(rich).toBeGreaterThan(0.1);
        expect(rich).toBeLessThan(0.6);
      }),
      few,
    );
  });

  test('is all old gold when nothing is said of threads; of several, each is in use', () => {
    const map = block(3, 260);
    const gold = mix(map).dressing;
    expect(gold.threads.map(({ name }) => name)).toEqual(['Old gold']);
    for (const count of [2, 5]) {
      const { threads, treatments } = mix(map, { threads: count }).dressing;
      expect(threads).toHaveLength(count);
      expect(new Set(threads.map(({ name }) => name)).size).toBe(count);
      expect(new Set(treatments.map(({ rows }) => rows[0].thread)).size).toBe(count);
    }
    expect(PALETTE).toHaveLength(12);
  });

  test('never leaves a single petal alone in a patch: it is for tips', () => {
    const stand = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].flatMap((seed) =>
      (mix(block(seed), { seed }).dressing.ornaments ?? []).map(({ ornament }) => ornament),
    );
    expect(stand.length).toBeGreaterThan(20);
    expect(stand).not.toContain('daisy-petal');
  });

  test('has ornaments in a third of its patches at most, none in two side by side', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = block(seed, 260);
        const { ornaments = [] } = mix(map, { seed }).dressing;
        const patches = ornaments.map(({ patch }) => {
          if (typeof patch !== 'object') throw new Error('stands in no patch');
          return map.patches.find(({ boundary }) => insideRings(patch.at, [boundary]))!.id;
        });
        expect(ornaments.length).toBeGreaterThan(0);
        expect(ornaments.length).toBeLessThanOrEqual(Math.round(map.patches.length / 3));
        const beside = map.seams.flatMap(({ sides }) =>
          sides.filter(
            ({ left, right }) =>
              left !== null && right !== null && patches.includes(left) && patches.includes(right),
          ),
        );
        expect(beside).toEqual([]);
      }),
      few,
    );
  });
});

describe('what the maker pins', () => {
  test('stays, however the rest is mixed, and nothing that meets it is like it', () => {
    const map = block(11);
    const pins = [
      { seam: 1, name: 'feather' },
      { seam: 3, name: 'Herringbone with knots' },
    ];
    for (const seed of [1, 2, 3, 4]) {
      const { dressing, why } = mix(map, { seed, pins });
      const [first, , third] = dressing.treatments;
      expect(first).toMatchObject({ pinned: true, rows: [{ stitch: 'feather' }] });
      expect(third).toMatchObject({ pinned: true, rows: [{ stitch: 'herringbone' }] });
      expect(third.accents?.[0].ornament).toBe('french-knot');
      expect(alike(map, dressing)).toEqual([]);
      expect(why.get(1)).toContain('pinned');
    }
  });

  test('in a dressing stays as it stands there, with its threads, when the rest is mixed again', () => {
    const map = block(11);
    const before = mix(map, { seed: 1, threads: 4, pins: [{ seam: 2, name: 'chevron-sprigs' }] }).dressing;
    const again = mix(map, { seed: 2, threads: 2 }, before).dressing;
    const threadsOf = ({ treatments, threads }: Dressing) => {
      const { rows, accents = [] } = treatments[1];
      return [...rows, ...accents].map(({ thread }) => threads[thread]);
    };
    const plain = ({ rows, accents = [] }: Treatment) =>
      [...rows, ...accents].map(({ thread: _, moreThreads: __, ...rest }) => rest);
    expect(plain(again.treatments[1])).toEqual(plain(before.treatments[1]));
    expect(threadsOf(again)).toEqual(threadsOf(before));
    expect(again.treatments[1].pinned).toBe(true);
    expect(alike(map, again)).toEqual([]);
    expect(again.treatments[0]).not.toEqual(before.treatments[0]);
  });

  test('keeps an ornament where it is, and sets no other beside it in its patch', () => {
    const map = block(11);
    const rose = { ornament: 'bullion-rose', parameters: {}, thread: 0, passes: 3, pinned: true } as const;
    const at = mix(map).dressing.ornaments![0].patch as { at: readonly [number, number] };
    const { ornaments = [] } = mix(map, {}, { ...bare(map), ornaments: [{ ...rose, patch: at }] }).dressing;
    expect(ornaments[0]).toMatchObject({ ...rose, patch: at });
    const patch = map.patches.find(({ boundary }) => insideRings(at.at, [boundary]))!;
    const inside = ornaments.filter((one) => {
      const spot = one.patch as { at: readonly [number, number] };
      return insideRings(spot.at, [patch.boundary]);
    });
    expect(inside).toHaveLength(1);
  });

  test('and all but the seams that are named stay when only these are mixed again, and so do all ornaments', () => {
    const map = block(11);
    const before = mix(map, { seed: 1, threads: 3 }).dressing;
    const { dressing, why } = mix(map, { seed: 2, seams: [2, 5], threads: undefined }, before);
    const changed = dressing.treatments.filter(
      (one, t) => JSON.stringify(one) !== JSON.stringify(before.treatments[t]),
    );
    expect(changed.map(({ seam }) => seam.id)).toEqual([2, 5]);
    expect(dressing.ornaments).toEqual(before.ornaments);
    expect(dressing.threads).toEqual(before.threads);
    expect(alike(map, dressing)).toEqual([]);
    expect(why.get(1)).toBe('as it was: only other seams are mixed');
  });

  test('among ornaments that were asked for just now takes threads of the palette, and none is like it', () => {
    const map = block(11);
    const fan = {
      ornament: 'fan',
      parameters: {},
      thread: 1,
      moreThreads: [2],
      passes: 3,
      pinned: true,
    } as const;
    const [first] = mix(map).dressing.ornaments!;
    const threads = PALETTE.slice(0, 3);
    const asked = { ...bare(map), threads, ornaments: [{ ...fan, patch: first.patch }] };
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      const { dressing } = mix(map, { seed, threads: 1, isNew: true }, asked);
      expect(dressing.threads.map(({ name }) => name)).toEqual(['Old gold']);
      expect(dressing.ornaments![0]).toMatchObject({ ornament: 'fan', thread: 0, moreThreads: [0] });
      expect(dressing.ornaments!.filter(({ ornament }) => ornament === 'fan')).toHaveLength(1);
    }
  });

  test('is dressed, though the dressing left it bare; what is left bare stays so', () => {
    const map = block(11);
    const left = [1, 2].map((id) => referenceTo(map.seams[id - 1]));
    const { dressing } = mix(map, { pins: [{ seam: 2, name: 'fly' }] }, { ...bare(map), bare: left });
    expect(dressing.bare!.map(({ id }) => id)).toEqual([1]);
    expect(dressing.treatments.map(({ seam }) => seam.id)).toEqual(map.seams.slice(1).map(({ id }) => id));
  });

  test('must be there: the nearest name is offered, and seams are numbered', () => {
    const map = block(11);
    const pinned = (seam: number, name: string) => () => mix(map, { pins: [{ seam, name }] });
    expect(pinned(1, 'fether')).toThrow(/did you mean "feather"/);
    expect(pinned(99, 'feather')).toThrow(InputError);
    expect(pinned(99, 'feather')).toThrow(/its seams are 1 to/);
  });
});

describe('a library that is too small', () => {
  test('leaves the fewest clashes, each named with both seams and the stitch', () => {
    const map = block(5);
    const { dressing, findings } = mix(map, {}, bare(map), onlyStitches('feather'));
    const meets = [...meetings(map)].flatMap(([a, near]) =>
      a === 'outline' ? [] : [...near].filter((b) => b !== 'outline' && a < b),
    );
    expect(alike(map, dressing)).toHaveLength(meets.length);
    expect(findings).toHaveLength(meets.length);
    for (const { code, level, message } of findings) {
      expect([code, level]).toEqual(['stitches-meet', 'warning']);
      expect(message).toMatch(/seam \d+ and seam \d+ meet and both have feather/);
    }
  });

  test('two pins that meet and are alike are told', () => {
    const map = block(11);
    const [a, b] = map.junctions
      .map(({ arms }) => [...new Set(arms.map(({ seam }) => seam))].filter((seam) => seam !== 'outline'))
      .find((seams) => seams.length > 1)!;
    const { findings } = mix(map, { pins: [a, b].map((seam) => ({ seam, name: 'fly' })) });
    expect(findings).toHaveLength(1);
    expect(findings[0].message).toContain('both have fly: both are asked for; another stitch');
  });
});
