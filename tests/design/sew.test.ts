import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design, Stop } from '../../src/design/design.js';
import { toRecords, writeDesign } from '../../src/design/write-design.js';
import { readDst } from '../../src/formats/dst-read.js';
import { stopsOf } from '../../src/formats/stops.js';
import { InputError } from '../../src/input-error.js';
import { littleNumbers, littleRecord, littleRecords, littleSummary } from '../formats/little-dst.js';
import { designArbitrary, designOf, kinds, type Run, stop } from './designs.js';

/** The runs of new stops, as the file has them, in the block's frame. */
function readBack(design: Design): [number, number][][][] {
  return stopsOf(readDst(writeDesign(design), 'x')).map(({ runs }) =>
    runs.map((run) =>
      Array.from({ length: run.length / 2 }, (_, i) => [
        run[2 * i] - design.origin[0],
        run[2 * i + 1] - design.origin[1],
      ]),
    ),
  );
}

/** Needle points without those that fall on the machine step of the one before. */
function onSteps(run: Run, [ox, oy]: readonly [number, number]): Run {
  const step = ([x, y]: readonly [number, number]) =>
    `${Math.round((x + ox) * 10)} ${Math.round(-(y + oy) * 10)}`;
  return run.filter((at, i) => i === 0 || step(at) !== step(run[i - 1]));
}

describe('a design sewn to a new file', () => {
  it('has every needle point where it was asked for, to half a machine step', () => {
    fc.assert(
      fc.property(designArbitrary, ({ runs, origin }) => {
        const read = readBack(designOf(runs, origin)).flat(2);
        const asked = runs.flat().flatMap((run) => onSteps(run, origin));
        // runs whose needle points all fall on one step leave no hole; a run that begins where the last one ended goes on
        const holes = (points: readonly (readonly [number, number])[]) => points.map(([x, y]) => `${x} ${y}`);
        expect(read.length).toBeLessThanOrEqual(asked.length);
        let at = 0;
        for (const [x, y] of read) {
          while (
            at < asked.length &&
            Math.max(Math.abs(asked[at][0] - x), Math.abs(asked[at][1] - y)) > 0.05 + 1e-9
          )
            at++;
          expect(at, `${x} ${y} was asked for, in this order, in ${holes(asked)}`).toBeLessThan(asked.length);
        }
      }),
    );
  });

  it('has exactly the runs it was given when they lie apart', () => {
    const apart = fc.array(
      fc.array(
        fc.array(
          fc.tuple(fc.double({ min: 0.5, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true })),
          { minLength: 1, maxLength: 8 },
        ),
        { minLength: 1, maxLength: 4 },
      ),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(apart, (steps) => {
        let x = 0;
        const runs = steps.map((stop) =>
          stop.map((run) => {
            x += 1;
            const points: [number, number][] = [[x, 0]];
            for (const [dx, y] of run) {
              x += dx;
              points.push([x, y]);
            }
            return points;
          }),
        );
        const read = readBack(designOf(runs, [-50, -65]));
        expect(read.map((s) => s.map((run) => run.length))).toEqual(
          runs.map((s) => s.map((run) => run.length)),
        );
        const asked = runs.flat(2);
        read.flat(2).forEach(([x, y], i) => {
          expect(Math.abs(x - asked[i][0])).toBeLessThan(0.05 + 1e-9);
          expect(Math.abs(y - asked[i][1])).toBeLessThan(0.05 + 1e-9);
        });
      }),
    );
  });

  it('never sews a stitch of zero length, and its header follows from its records', () => {
    fc.assert(
      fc.property(designArbitrary, ({ runs, origin }) => {
        const file = writeDesign(designOf(runs, origin));
        const records = littleRecords(file);
        expect(records.filter((r) => r.kind !== 'change' && r.dx === 0 && r.dy === 0)).toEqual([]);
        expect(records.filter((r) => r.kind === 'change')).toHaveLength(runs.length - 1);
        expect(littleNumbers(file)).toEqual(littleSummary(records));
      }),
    );
  });

  it('rounding errors never add up: a thousand stitches of 1.04 mm end within half a step', () => {
    const line: Run = Array.from({ length: 1001 }, (_, i) => [1.04 * i, -0.52 * i]);
    const [[run]] = readBack(designOf([[line]], [0, 0]));
    const [x, y] = run[run.length - 1];
    expect(Math.hypot(x - 1040, y + 520)).toBeLessThan(0.0501);
  });

  it('y turns round, and the start is the center of the sewing field', () => {
    const records = toRecords(
      designOf(
        [
          [
            [
              [60, 70],
              [61, 72],
            ],
          ],
        ],
        [-50, -65],
      ),
    );
    expect([0, 1].map((i) => littleRecord(records, 3 * i))).toEqual([
      { kind: 'jump', dx: 100, dy: -50 },
      { kind: 'stitch', dx: 10, dy: -20 },
    ]);
  });
});

describe('moves between runs', () => {
  const pair = (gap: number, across = 0): Run[] => [
    [
      [0, 0],
      [2, 0],
    ],
    [
      [2 + gap, across],
      [4 + gap, across],
    ],
  ];

  it('up to 8 mm leave the thread: one jump', () => {
    expect(kinds(designOf([pair(3)]))).toBe('sjs');
    expect(kinds(designOf([pair(8)]))).toBe('sjs');
  });

  it('over 8 mm are trimmed: at least three jumps, more when the way is longer', () => {
    expect(kinds(designOf([pair(8.1)]))).toBe('sjjjs');
    expect(kinds(designOf([pair(5.7, 5.7)]))).toBe('sjjjs');
    expect(kinds(designOf([pair(36.3)]))).toBe('sjjjs');
    expect(kinds(designOf([pair(36.4)]))).toBe('sjjjjs');
  });

  it('between stops begin with the change, then as many jumps as the way needs', () => {
    const [first, second] = pair(20);
    expect(kinds(designOf([[first], [second]]))).toBe('scjjs');
    expect(kinds(designOf([[first], [pair(10)[1]]]))).toBe('scjs');
    expect(
      kinds(
        designOf([
          [first],
          [
            [
              [2, 0],
              [3, 0],
            ],
          ],
        ]),
      ),
    ).toBe('scs');
  });

  it('of no length are left out, so that the runs become one', () => {
    expect(kinds(designOf([pair(0)]))).toBe('ss');
  });

  it('and stitches longer than 12.1 mm along an axis come in equal parts', () => {
    const records = toRecords(
      designOf([
        [
          [
            [0, 0],
            [30, -12.2],
          ],
        ],
      ]),
    );
    expect([0, 1, 2].map((i) => littleRecord(records, 3 * i))).toEqual([
      { kind: 'stitch', dx: 100, dy: 41 },
      { kind: 'stitch', dx: 100, dy: 40 },
      { kind: 'stitch', dx: 100, dy: 41 },
    ]);
    expect(
      kinds(
        designOf([
          [
            [
              [0, 0],
              [12.1, -12.1],
            ],
          ],
        ]),
      ),
    ).toBe('s');
  });

  it('of any length fit into records and arrive', () => {
    const far = fc.integer({ min: -99_999, max: 99_999 });
    fc.assert(
      fc.property(far, far, (x, y) => {
        const design = designOf([
          [
            [
              [0, 0],
              [1, 0],
            ],
            [
              [x / 10, y / 10],
              [0, 0.1],
            ],
          ],
        ]);
        const records = littleRecords(writeDesign(design));
        let at = [0, 0];
        const seen = records.map(({ dx, dy }) => {
          at = [at[0] + dx, at[1] + dy];
          return at.join();
        });
        expect(
          Math.max(...records.flatMap(({ dx, dy }) => [Math.abs(dx), Math.abs(dy)])),
        ).toBeLessThanOrEqual(121);
        expect(seen).toContain([x, 0 - y].join());
        expect(at).toEqual([0, -1]);
      }),
    );
  });
});

describe('needle points that no machine can reach', () => {
  it('are refused: no numbers, or beyond what the header can tell', () => {
    const bad = [Number.NaN, Number.POSITIVE_INFINITY, -1e300, 10_000];
    for (const value of bad) {
      const stops: Stop[] = [
        stop([
          [
            [0, 0],
            [1, value],
          ],
        ]),
      ];
      const design = { ...designOf([]), stops };
      expect(() => writeDesign(design)).toThrow(InputError);
      expect(() => writeDesign(design)).toThrow(
        /^color stop "stop 1": it has a needle point at 1, .* mm of the block; a stitch file reaches 9999.9 mm/,
      );
    }
    expect(() =>
      writeDesign(
        designOf([
          [
            [
              [0, 0],
              [9999.9, 0],
            ],
          ],
        ]),
      ),
    ).not.toThrow();
  });
});
