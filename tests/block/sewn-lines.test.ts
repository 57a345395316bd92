import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import { distance, type Point } from '../../src/geometry/point.js';
import { fromPoints } from '../../src/geometry/polyline.js';
import { evenly, outAndBack, overrun, type SewnStop, tied } from '../fixtures/pieced-sewing.js';
import { nearestTo } from './sewn-measure.js';
import { randomBlock, seeded } from './sewn-random-block.js';
import { readBack } from './sewn-read-back.js';

/** How a maker's program may have sewn the seams. */
const habits = fc.record({
  seed: fc.integer({ min: 0, max: 2 ** 31 }),
  seams: fc.integer({ min: 3, max: 14 }),
  stitch: fc.double({ min: 1.5, max: 4, noNaN: true }),
  back: fc.double({ min: 1.5, max: 4, noNaN: true }),
  twice: fc.boolean(),
  ties: fc.boolean(),
  oneStop: fc.boolean(),
  overruns: fc.constantFrom<'none' | 'usual' | 'short'>('none', 'usual', 'short'),
  bulge: fc.constantFrom(0, 0.06, 0.12),
});

type Habits = typeof habits extends fc.Arbitrary<infer T> ? T : never;

function sewnBlock(h: Habits): { lines: (readonly Point[])[]; stops: SewnStop[] } {
  const { outline, seams } = randomBlock(h.seed, h.seams, h.bulge);
  const random = seeded(h.seed + 1);
  const over = () =>
    h.overruns === 'usual' ? 3 + 3 * random() : h.overruns === 'short' ? -0.4 * h.stitch * random() : 0;
  const runs = seams.map((line) => {
    const way = random() < 0.5 ? [...line] : [...line].reverse();
    const long = overrun(way, over(), over());
    const run = h.twice ? outAndBack(long, h.stitch, h.back) : evenly(long, h.stitch);
    return h.ties ? tied(run) : run;
  });
  runs.sort(() => random() - 0.5);
  runs.push(h.ties ? tied(evenly(outline, h.stitch)) : evenly(outline, h.stitch));
  return {
    lines: [...seams, outline],
    stops: h.oneStop ? [runs] : runs.map((run) => [run]),
  };
}

/** The same lines as a drawing would give them. */
const drawn = (lines: readonly (readonly Point[])[]) => ({
  width: 200,
  height: 200,
  origin: [0, 0] as const,
  lines: lines.map((line) => ({
    points: fromPoints(line),
    closed: line[0] === line[line.length - 1],
    fill: null,
    where: 'test',
  })),
});

describe('seams read from sewn stops', () => {
  it('are the lines that were sewn, within 0.2 mm, cut at their junctions', () => {
    fc.assert(
      fc.property(habits, (h) => {
        const { lines, stops } = sewnBlock(h);
        const read = readBack(stops);
        expect(read.length).toBe(lines.length);
        for (const line of lines) expect(nearestTo(line, read)).toBeLessThan(0.2);
      }),
      { numRuns: 60 },
    );
  });

  it('make the seam map that a drawing of them makes', () => {
    fc.assert(
      fc.property(habits, (h) => {
        const { lines, stops } = sewnBlock(h);
        const wanted = buildSeamMap(drawn(lines)).map;
        const { map } = buildSeamMap(drawn(readBack(stops)));
        expect(map.seams.length).toBe(wanted.seams.length);
        expect(map.junctions.length).toBe(wanted.junctions.length);
        expect(map.patches.length).toBe(wanted.patches.length);
        for (const junction of wanted.junctions) {
          const same = map.junctions.filter(({ at }) => distance(at, junction.at) < 0.3);
          expect(same.length).toBe(1);
          expect(same[0].arms.length).toBe(junction.arms.length);
          expect(same[0].through === null).toBe(junction.through === null);
        }
      }),
      { numRuns: 60 },
    );
  });
});
