import fc from 'fast-check';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import Polygonizer from 'jsts/org/locationtech/jts/operation/polygonize/Polygonizer.js';
import UnaryUnionOp from 'jsts/org/locationtech/jts/operation/union/UnaryUnionOp.js';
import { describe, expect, it } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import { withoutDoubled } from '../../src/block/doubled.js';
import type { LineDrawing } from '../../src/block/drawn-line.js';
import { traceFaces } from '../../src/block/faces.js';
import { networkOf } from '../../src/block/network.js';
import { cutIntoPieces } from '../../src/block/pieces.js';
import { snapEnds } from '../../src/block/snap-ends.js';
import type { Point } from '../../src/geometry/point.js';
import { type Points, polylineLength, toPoints } from '../../src/geometry/polyline.js';
import { countyBlock } from '../fixtures/counties.js';
import { box, drawing, wholeLength } from './draw.js';

/** Areas of the polygons that JTS (jsts: UnaryUnionOp for cutting at crossings, then Polygonizer) finds in lines. */
function polygonAreas(lines: readonly Points[]): number[] {
  const factory = new GeometryFactory();
  const strings = lines.map((points) =>
    factory.createLineString(toPoints(points).map(([x, y]) => new Coordinate(x, y))),
  );
  const polygonizer = new Polygonizer();
  polygonizer.add(UnaryUnionOp.union(factory.createMultiLineString(strings)));
  const areas: number[] = [];
  for (const it = polygonizer.getPolygons().iterator(); it.hasNext(); ) areas.push(it.next().getArea());
  return areas.sort((a, b) => a - b);
}

const areasOf = (block: LineDrawing, snap?: number) =>
  buildSeamMap(block, { snap })
    .map.patches.map(({ area }) => area)
    .sort((a, b) => a - b);

function networkFrom(block: LineDrawing, snap: number) {
  const { pieces } = cutIntoPieces(block.lines, snap);
  return networkOf(snapEnds(withoutDoubled(pieces, snap).pieces, snap), snap);
}

/** Random blocks: a square with straight seams across it, ends anywhere, on a grid coarser than any tolerance. */
const randomLines = fc
  .uniqueArray(
    fc
      .tuple(...[0, 1, 2, 3].map(() => fc.integer({ min: 0, max: 12 })))
      .filter(([a, b, c, d]) => a !== c || b !== d),
    { minLength: 1, maxLength: 14, selector: String },
  )
  .map((all) =>
    drawing([
      box(0, 0, 96, 96),
      ...all.map(([a, b, c, d]): Point[] => [
        [8 * a, 8 * b],
        [8 * c, 8 * d],
      ]),
    ]),
  );

describe('patches against another library', () => {
  it('of random lines have the areas that JTS finds', () => {
    fc.assert(
      fc.property(randomLines, (block) => {
        // a tolerance below the closest spacing of crossings on this grid
        const ours = areasOf(block, 1e-3);
        const theirs = polygonAreas(block.lines.map(({ points }) => points));
        expect(ours).toHaveLength(theirs.length);
        ours.forEach((area, i) => void expect(area).toBeCloseTo(theirs[i], 3));
      }),
      { numRuns: 60 },
    );
  });

  // Vermont, Iowa, Kansas, Wyoming
  it.each(['50', '19', '20', '56'])('of the counties of state %s have the areas that JTS finds', (state) => {
    const block = countyBlock(state);
    const ours = areasOf(block, 1e-3);
    const theirs = polygonAreas(block.lines.map(({ points }) => points));
    expect(ours).toHaveLength(theirs.length);
    ours.forEach((area, i) => void expect(area).toBeCloseTo(theirs[i], 3));
  });
});

describe('patches against the atlas', () => {
  // us-atlas declares one polygon for each county, and one more for each island; New York has islands. In Michigan and
  // in Texas an island has a neck narrower than 0.3 mm at this size: at that tolerance it is pinched into two.
  it.each([
    ['50', 0.3],
    ['19', 0.3],
    ['20', 0.3],
    ['56', 0.3],
    ['48', 0.2],
    ['36', 0.3],
    ['53', 0.3],
    ['08', 0.3],
    ['26', 0.2],
  ])('state %s has as many as it declares', (state, snap) => {
    const block = countyBlock(state);
    expect(buildSeamMap(block, { snap }).map.patches).toHaveLength(block.polygons);
  });

  it('the borders keep their length to 0.01 %', () => {
    for (const state of ['19', '50']) {
      const block = countyBlock(state);
      const drawn = block.lines.reduce((sum, { points }) => sum + polylineLength(points), 0);
      expect(Math.abs(wholeLength(buildSeamMap(block).map) / drawn - 1)).toBeLessThan(1e-4);
    }
  });
});

describe("Euler's formula: V - E + F = 1 + C, faces counted by tracing them", () => {
  const balance = (block: LineDrawing, snap: number) => {
    const network = networkFrom(block, snap);
    const { cycles, parts } = traceFaces(network);
    const used = new Set(network.edges.flatMap(({ from, to }) => [from, to]));
    // every part has one outer side; all outer sides together are one face
    const faces = cycles.length - parts + 1;
    return used.size - network.edges.length + faces - (1 + parts);
  };

  it('holds for county borders', () => {
    for (const state of ['19', '50', '08', '26', '48']) expect(balance(countyBlock(state), 0.3)).toBe(0);
  });

  it('holds for random lines, at any tolerance', () => {
    fc.assert(
      fc.property(randomLines, fc.constantFrom(1e-3, 0.3, 2), (block, snap) => {
        expect(balance(block, snap)).toBe(0);
      }),
      { numRuns: 60 },
    );
  });
});
