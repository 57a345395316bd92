import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readStitchBlock } from '../../src/block/read-stitch-file.js';
import { recognizeStops } from '../../src/block/roles/recognize.js';
import type { Role } from '../../src/block/roles/role.js';
import { readDst } from '../../src/formats/dst-read.js';
import { figureLines } from '../../src/geometry/figures.js';
import type { Point } from '../../src/geometry/point.js';
import { toPoints } from '../../src/geometry/polyline.js';
import { PANEL_STOPS, piecedPanel, SEAM_STOPS } from '../fixtures/pieced-panel.js';
import {
  evenly,
  outAndBack,
  overrun,
  type SewnStop,
  sewnFile,
  tied,
  zigzag,
} from '../fixtures/pieced-sewing.js';
import { nearestTo } from './sewn-measure.js';
import { type PlainBlock, randomBlock } from './sewn-random-block.js';

const rolesOf = (bytes: Uint8Array): Role[] =>
  recognizeStops(readDst(bytes, 'x.dst')).roles.map(({ role }) => role);

/** What the panel's stops are, by the words of their titles. */
const ROLE_OF: readonly (readonly [RegExp, Role])[] = [
  [/map/, 'map'],
  [/^tack/, 'tack-down'],
  [/^seam/, 'seam'],
  [/^(place|outline)/, 'placement'],
  [/edge/, 'edge'],
];

describe('the color stops of the pieced apron panel', () => {
  it('are taken for what they are', () => {
    const named = PANEL_STOPS.map(({ title }) => ROLE_OF.find(([word]) => word.test(title))![1]);
    expect(rolesOf(piecedPanel())).toEqual(named);
  });

  it('give the seams by the map alone, and new stops go in before the outline and the edge over it', () => {
    const { seams, after } = recognizeStops(readDst(piecedPanel(), 'x.dst'));
    expect(seams).toEqual([1]);
    expect(PANEL_STOPS[after - 1].title).toBe('edge pocket');
  });

  it('give them by seams and placement lines where there is no map', () => {
    const bytes = sewnFile(
      PANEL_STOPS.slice(1).map(({ runs }) => runs),
      [65, 90],
      'PANEL',
    );
    const { seams } = recognizeStops(readDst(bytes, 'x.dst'));
    expect(seams).toEqual(SEAM_STOPS.map((stop) => stop - 1));
  });

  it('are what the maker says they are', () => {
    const said = new Map<number, Role>([[1, 'other']]);
    const { roles, seams } = recognizeStops(readDst(piecedPanel(), 'x.dst'), said);
    expect(roles[0]).toMatchObject({ role: 'other', evidence: 'you said so' });
    expect(seams).toEqual(SEAM_STOPS);
  });
});

/** A line of the outline's shape, so far outside. */
function outside(outline: readonly Point[], by: number): Point[] {
  const [[left, top], , [right, bottom]] = outline;
  return [
    [left - by, top - by],
    [right + by, top - by],
    [right + by, bottom + by],
    [left - by, bottom + by],
    [left - by, top - by],
  ];
}

/** Piece numbers and an arrow in the middle of the block's patches, as far as they stay clear of all seams. */
function marks({ seams, outline }: PlainBlock): Point[][] {
  const [, , [w, h]] = outline;
  const spots: Point[] = [0.15, 0.35, 0.55, 0.75].flatMap((x) =>
    [0.2, 0.5, 0.8].map((y): Point => [x * w, y * h]),
  );
  const away = ([x, y]: Point, line: readonly Point[]) =>
    Math.min(
      ...line.slice(1).map(([x1, y1], i) => {
        const [x0, y0] = line[i];
        const [dx, dy] = [x1 - x0, y1 - y0];
        const t = Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy)));
        return Math.hypot(x - x0 - t * dx, y - y0 - t * dy);
      }),
    );
  const free = spots.filter((spot) => [...seams, outline].every((line) => away(spot, line) > 8));
  return free.slice(0, 4).flatMap(([x, y], i) => figureLines(6 + i, x, y, 6).map(toPoints));
}

const WAYS = ['seams', 'one stop', 'once', 'map'] as const;
type Way = (typeof WAYS)[number];

/** How a maker's file sews a block, and which role each of its stops has. */
function sewnBlock(block: PlainBlock, way: Way, stitch: number, over: number, allowance: boolean) {
  const stops: { role: Role; runs: SewnStop }[] = [];
  const seams = [...block.seams].reverse().map((line) => overrun(line, over, over));
  if (way === 'map') {
    const lines = [...block.seams, block.outline, ...marks(block)].map((line) =>
      evenly(line, Math.min(stitch, 2.5)),
    );
    stops.push({ role: 'map', runs: lines });
  }
  if (way === 'one stop')
    stops.push({ role: 'seam', runs: seams.map((line) => tied(outAndBack(line, stitch))) });
  if (way === 'once')
    for (const line of seams) stops.push({ role: 'seam', runs: [tied(evenly(line, stitch))] });
  if (way === 'seams' || way === 'map') {
    for (const line of seams)
      stops.push({ role: 'seam', runs: [tied(outAndBack(line, stitch, stitch * 0.9))] });
  }
  if (allowance)
    stops.push({ role: 'allowance', runs: [tied(evenly(outside(block.outline, 6.35), stitch))] });
  stops.push({ role: 'placement', runs: [tied(evenly(block.outline, stitch))] });
  stops.push({ role: 'edge', runs: [tied(zigzag(block.outline, 4, 0.6))] });
  return stops;
}

const sewing = fc.record({
  seed: fc.integer({ min: 1, max: 400 }),
  bulge: fc.constantFrom(0, 0.12),
  seams: fc.integer({ min: 3, max: 8 }),
  way: fc.constantFrom(...WAYS),
  stitch: fc.double({ min: 1.5, max: 4, noNaN: true }),
  over: fc.double({ min: 3, max: 5.5, noNaN: true }),
  allowance: fc.boolean(),
});

describe('a block sewn in any of the usual ways', () => {
  it('has its stops taken for what they are, and its seams read back within 0.2 mm', () => {
    fc.assert(
      fc.property(sewing, ({ seed, bulge, seams, way, stitch, over, allowance }) => {
        const block = randomBlock(seed, seams, bulge);
        fc.pre(block.seams.length >= 3);
        const stops = sewnBlock(block, way, stitch, over, allowance);
        const start: Point = [60, 70];
        const bytes = sewnFile(
          stops.map(({ runs }) => runs),
          start,
          'TEST',
        );
        const found = recognizeStops(readDst(bytes, 'x.dst'));
        expect(found.roles.map(({ role }) => role)).toEqual(stops.map(({ role }) => role));
        expect(stops[found.after - 1].role).toBe('seam');
        const source = { file: '', stops: found.seams, snap: 0.3, through: [] };
        const { map, origin } = readStitchBlock(bytes, 'x.dst', source);
        const lines = map.seams.map(({ points }) =>
          toPoints(points).map(([x, y]): Point => [x + origin[0] + start[0], y + origin[1] + start[1]]),
        );
        const far = block.seams.filter((line) => nearestTo([...line], lines) > 0.2);
        expect(far).toEqual([]);
        expect(map.patches.length).toBe(block.seams.length + 1);
        expect(map.seams.length).toBe(block.seams.length);
      }),
      { numRuns: 80 },
    );
  });
});
