import { describe, expect, it } from 'vitest';
import type { Block } from '../../src/block/block.js';
import { placedBlock } from '../../src/block/placed-block.js';
import { placementOf } from '../../src/block/placed-map.js';
import { readStitchBlock } from '../../src/block/read-stitch-file.js';
import { stopsOf } from '../../src/formats/stops.js';
import { distance, type Point } from '../../src/geometry/point.js';
import { toPoints } from '../../src/geometry/polyline.js';
import { InputErrors } from '../../src/input-error.js';
import { PANEL_STOPS, piecedPanel, SEAM_STOPS } from '../fixtures/pieced-panel.js';
import { evenly, outAndBack, type SewnStop, sewnFile, tied, zigzag } from '../fixtures/pieced-sewing.js';

const blockOf = (bytes: Uint8Array, stops: readonly number[]): Block =>
  readStitchBlock(bytes, 'block.dst', { file: 'block.dst', stops, snap: 0.3, through: [] });
const panel = blockOf(piecedPanel(), SEAM_STOPS);

const placed = (block: Block, scale: number, turn = 0, leaveOut: readonly number[] = []): Block =>
  placedBlock(block, placementOf(block.map, scale, turn), leaveOut);
const runsOf = (block: Block, stop: number): Point[][] =>
  stopsOf(block.existing!)[stop - 1].runs.map(toPoints);
const stitches = (run: readonly Point[]): number[] => run.slice(1).map((p, i) => distance(run[i], p));
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];
/** The stitches of each way along a line: cut where it goes back, without ties (0.7 mm, and the rest of a stitch). */
function passes(run: readonly Point[]): number[][] {
  const ways: Point[][] = [[run[3]]];
  for (let i = 4; i < run.length - 3; i++) {
    ways[ways.length - 1].push(run[i]);
    const [a, b, c] = [run[i - 1], run[i], run[i + 1]];
    const isBack = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0;
    if (isBack && distance(a, b) > 1) ways.push([b]);
  }
  return ways.map(stitches).map((way, i) => (i ? way : way.slice(1)));
}

/** A block of 80 x 60 mm with one seam, and what else is sewn on it; the machine begins in its middle. */
const OUTLINE: Point[] = [
  [0, 0],
  [80, 0],
  [80, 60],
  [0, 60],
  [0, 0],
];
const around = (by: number): Point[] => [
  [-by, -by],
  [80 + by, -by],
  [80 + by, 60 + by],
  [-by, 60 + by],
  [-by, -by],
];
const SEAM: Point[] = [
  [30, -5],
  [45, 64],
];
function little(...more: SewnStop[]): Block {
  const stops: SewnStop[] = [[tied(evenly(OUTLINE, 2.5))], [tied(outAndBack(SEAM, 2.8, 2.6))], ...more];
  return blockOf(sewnFile(stops, [40, 30], 'LITTLE'), [1, 2]);
}
/** Needle points in the frame of the little block. */
const inFrame = (block: Block, stop: number): Point[] =>
  runsOf(block, stop)
    .flat()
    .map(([x, y]): Point => [x - block.origin[0], y - block.origin[1]]);

describe('a block from a stitch file, at its own size', () => {
  it('is the very block, record for record', () => {
    expect(placed(panel, 1)).toBe(panel);
    expect(placed(panel, 1, 360).existing).toBe(panel.existing);
  });

  it('turned by a quarter keeps every record, and every stitch its length; four quarters are none', () => {
    let turned = panel;
    for (let k = 1; k <= 4; k++) {
      turned = placed(turned, 1, 90);
      expect([...turned.existing!.kinds]).toEqual([...panel.existing!.kinds]);
      const { moves } = turned.existing!;
      const lengths = (m: Int16Array) =>
        Array.from(
          m.filter((_, i) => i % 2 === 0),
          (x, i) => x ** 2 + m[2 * i + 1] ** 2,
        );
      expect(lengths(moves)).toEqual(lengths(panel.existing!.moves));
    }
    expect(turned.existing!.records).toEqual(panel.existing!.records);
    expect([turned.map.width, turned.map.height, ...turned.origin]).toEqual([130, 180, -65, -90]);
  });

  it('turned askew lies where it should: no needle point is further off than rounding', () => {
    const turned = placed(panel, 1, 30);
    const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const off = stopsOf(panel.existing!).flatMap(({ stop }) =>
      runsOf(panel, stop).flatMap((run, r) =>
        run.map(([x, y], i) => distance(runsOf(turned, stop)[r][i], [x * cos + y * sin, y * cos - x * sin])),
      ),
    );
    expect(Math.max(...off)).toBeLessThan(0.08);
  }, 30_000);

  it('without some of its stops sews the others where they were, with a change between each two', () => {
    const left = placed(panel, 1, 0, [1, 5, 26]);
    const kept = PANEL_STOPS.map((_, i) => i + 1).filter((stop) => ![1, 5, 26].includes(stop));
    expect(stopsOf(left.existing!).map(({ runs }) => runs.map(toPoints))).toEqual(
      kept.map((stop) => runsOf(panel, stop)),
    );
    expect(left.stops).toEqual(SEAM_STOPS.filter((stop) => stop !== 5).map((stop) => kept.indexOf(stop) + 1));
    expect(() => placed(panel, 1, 0, [27])).toThrow('has no color stop 27; it has color stops 1 to 26');
  });
});

describe.each([0.7, 1.5])('a block from a stitch file made %s times as large', (scale) => {
  const larger = placed(panel, scale);

  it('has its seams and its stitching in one place', () => {
    expect(larger.map.width).toBeCloseTo(130 * scale, 9);
    expect(larger.map.seams.map(({ id }) => id)).toEqual(panel.map.seams.map(({ id }) => id));
    // read anew, the stitching gives the same block: seams ran past the outline before, and still do
    const again = readStitchBlock(sewnBytes(larger), 'x', {
      file: 'x',
      stops: larger.stops,
      snap: 0.3,
      through: [],
    });
    expect(again.map.seams).toHaveLength(panel.map.seams.length);
    expect(again.map.width).toBeCloseTo(larger.map.width, 0);
    expect(again.origin[0]).toBeCloseTo(larger.origin[0], 0);
  });

  it('is sewn in stitches as long as before, each within a tenth of the median of its way', () => {
    const wrong: string[] = [];
    PANEL_STOPS.forEach(({ title }, i) => {
      if (!/^(seam|place|outline)/.test(title)) return;
      const [before, after] = [panel, larger].map((block) => runsOf(block, i + 1).flatMap(passes));
      after.forEach((way, w) => {
        const usual = median(way);
        if (Math.abs(usual - median(before[w])) > 0.1 * usual) wrong.push(`${title}: ${usual}`);
        wrong.push(
          ...way.filter((one) => Math.abs(one - usual) > 0.1 * usual).map((one) => `${title}: ${one}`),
        );
      });
    });
    expect(wrong).toEqual([]);
  });

  it('keeps ties as they are', () => {
    const ties = (block: Block, stop: number) => {
      const all = stitches(runsOf(block, stop)[0]);
      return [...all.slice(0, 3), ...all.slice(-2)].map((one) => Math.round(10 * one) / 10);
    };
    const off = SEAM_STOPS.flatMap((stop) =>
      ties(larger, stop).map((one, i) => Math.abs(one - ties(panel, stop)[i])),
    );
    expect(Math.max(...off), 'rounded to machine steps').toBeLessThanOrEqual(0.15);
  });

  it('keeps the width and the spacing of its zigzags, on the line that they follow', () => {
    const on: Point[] = [
      [10, 30],
      [70, 40],
    ];
    const before = little([zigzag(on, 3, 0.8)]);
    const after = placed(before, scale);
    const [a, b] = [before, after].map((block) => runsOf(block, 3)[0]);
    expect(Math.abs(b.length - 1 - (a.length - 1) * scale)).toBeLessThan(1);
    expect(median(stitches(b))).toBeCloseTo(median(stitches(a)), 1);
    // distance across the line from (10, 30) to (70, 40): half the width on either side
    const across = inFrame(after, 3).map(([x, y]) => {
      const [dx, dy] = [x - 10 * scale, y - 30 * scale];
      return (dy * 60 - dx * 10) / Math.hypot(60, 10);
    });
    const odd = across.filter(
      (one, i) => Math.abs(one - (i % 2 ? 1.5 : -1.5) * Math.sign(-across[0])) > 0.15,
    );
    expect(odd).toEqual([]);
  });

  it.each([1, -1, 3])('has an edge %s mm outside its outline as far outside it as before', (by) => {
    for (const pitch of [0.4, 0.8]) {
      const before = little([zigzag(around(by), 3, pitch)]);
      const after = placed(before, scale);
      // along the upper side, away from its corners
      const upper = (block: Block, times: number) =>
        inFrame(block, 3).filter(([x, y]) => x > 15 * times && x < 65 * times && y < 10);
      const [a, b] = [upper(before, 1), upper(after, scale)];
      const reach = (points: Point[], side: 'min' | 'max') => Math[side](...points.map(([, y]) => y));
      for (const side of ['min', 'max'] as const) {
        expect(Math.abs(reach(b, side) - reach(a, side)), 'rounded to machine steps').toBeLessThan(0.15);
      }
      expect(Math.abs(b.length - scale * a.length), 'its own spacing').toBeLessThan(3);
    }
  });

  it('has an allowance line as far from the outline as before, its corners sharp', () => {
    const d = 6.35;
    for (const by of [d, -3]) {
      const after = placed(little([tied(evenly(around(by), 2.5))]), scale);
      const box = [-by, 80 * scale + by, 60 * scale + by];
      // every needle point lies on one of the four lines
      const off = inFrame(after, 3).map(([x, y]) =>
        Math.min(...[x - box[0], x - box[1], y - box[0], y - box[2]].map(Math.abs)),
      );
      expect(Math.max(...off)).toBeLessThan(0.15);
      for (const corner of [
        [box[0], box[0]],
        [box[1], box[2]],
      ] as Point[]) {
        expect(Math.min(...inFrame(after, 3).map((p) => distance(p, corner)))).toBeLessThan(0.2);
      }
    }
  });

  it('lets seams run as far past the outline as before: an allowance is never scaled', () => {
    const ys = inFrame(placed(little(), scale), 2).map(([, y]) => y);
    expect(Math.min(...ys)).toBeCloseTo(-5, 0);
    expect(Math.max(...ys) - 60 * scale).toBeCloseTo(4, 0);
  });

  it('is refused where stops are fills, each in a line of its own that offers to leave it out', () => {
    const fill: SewnStop = [
      Array.from({ length: 40 }, (_, r): Point[] => {
        const row = evenly(
          [
            [10, 10 + 0.4 * r],
            [28, 10 + 0.4 * r],
          ],
          3,
        );
        return r % 2 ? row.reverse() : row;
      }).flat(),
    ];
    const block = little(
      fill,
      [
        tied(
          evenly(
            [
              [50, 20],
              [70, 20],
            ],
            2.5,
          ),
        ),
      ],
      fill,
    );
    const refused = (leaveOut: readonly number[]): string[] => {
      try {
        placed(block, scale, 0, leaveOut);
        return [];
      } catch (error) {
        return error instanceof InputErrors
          ? error.errors.map(({ message }) => message)
          : [(error as Error).message];
      }
    };
    expect(refused([])).toEqual(
      [3, 5].map(
        (stop) =>
          `color stop ${stop}: it fills an area with thread, and a fill cannot be laid anew at another size; leave this stop out with --leave-out ${stop}, or keep the size`,
      ),
    );
    expect(refused([3])).toHaveLength(1);
    expect(refused([3, 5])).toEqual([]);
    expect(placed(block, 1, 90).existing!.kinds, 'turned, a fill is as it was').toEqual(
      block.existing!.kinds,
    );
  });
});

function sewnBytes({ existing }: Block): Uint8Array {
  const header = new Uint8Array(512).fill(0x20);
  header.set([0x4c, 0x41, 0x3a]);
  return Uint8Array.of(...header, ...existing!.records, 0, 0, 0xf3);
}
