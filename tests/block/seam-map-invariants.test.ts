import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import type { SeamMap } from '../../src/block/seam-map.js';
import { signedArea } from '../../src/geometry/area.js';
import type { Point } from '../../src/geometry/point.js';
import { cumulativeLength, type Points, polylineLength } from '../../src/geometry/polyline.js';
import { pointAtLength } from '../../src/geometry/polyline-part.js';
import { countyBlock } from '../fixtures/counties.js';
import { box, circle, drawing, drawn } from './draw.js';

const at = (points: Points, u: number): Point => pointAtLength(points, cumulativeLength(points), u);
const near = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-5;

/** Everything the later steps take for granted. */
function holds(map: SeamMap): void {
  const { seams, junctions, patches, outline } = map;
  expect(seams.map(({ id }) => id)).toEqual(seams.map((_, i) => i + 1));
  expect(patches.map(({ id }) => id)).toEqual(patches.map((_, i) => i + 1));
  for (const { boundary, holes, area } of patches) {
    expect(area).toBeGreaterThan(0);
    expect(signedArea(boundary)).toBeGreaterThan(0);
    expect(area).toBeCloseTo(
      signedArea(boundary) - holes.reduce((sum, h) => sum + Math.abs(signedArea(h)), 0),
      5,
    );
  }
  for (const seam of seams) {
    const length = polylineLength(seam.points);
    expect(length).toBeGreaterThan(0);
    expect(seam.closed).toBe(seam.ends === null);
    expect(seam.sides[0].from).toBe(0);
    expect(seam.sides[seam.sides.length - 1].to).toBeCloseTo(length, 6);
    seam.sides.forEach(({ from, to }, i) => {
      expect(to).toBeGreaterThan(from);
      if (i > 0) expect(from).toBe(seam.sides[i - 1].to);
    });
    for (const { u, junction } of seam.crossings) {
      expect(u).toBeLessThanOrEqual(length);
      expect(near(at(seam.points, u), junctions[junction].at)).toBe(true);
    }
    seam.ends?.forEach(({ kind, junction }, i) => {
      expect(junction >= 0).toBe(kind !== 'free');
      if (junction < 0) return;
      expect(near(at(seam.points, i ? length : 0), junctions[junction].at)).toBe(true);
      expect(junctions[junction].onOutline).toBe(kind === 'outline');
    });
  }
  for (const { at: place, arms, through, onOutline } of junctions) {
    expect(arms.length).toBeGreaterThan(1);
    arms.forEach(({ seam, u, direction }, i) => {
      const points = seam === 'outline' ? outline!.points : seams[seam - 1].points;
      expect(near(at(points, u), place)).toBe(true);
      if (i > 0) expect(direction).toBeGreaterThanOrEqual(arms[i - 1].direction);
    });
    expect(onOutline).toBe(arms.some(({ seam }) => seam === 'outline'));
    if (through !== null) expect(arms.filter(({ seam }) => seam === through).length).toBeGreaterThan(1);
  }
}

const coordinate = fc.double({ min: 0, max: 40, noNaN: true });
const point = fc.tuple(coordinate, coordinate);
const wriggle = fc.array(point, { minLength: 2, maxLength: 6 });
const ring = fc
  .tuple(point, fc.double({ min: 0.1, max: 15, noNaN: true }))
  .map(([[x, y], r]): Point[] => circle(x, y, r, 48));
const patch = fc
  .tuple(point, point, fc.constantFrom('#112233', '#445566', null))
  .map(([[x, y], [w, h], fill]) => drawn(box(x, y, w + 0.1, h + 0.1), fill));
const mess = fc.array(fc.oneof(wriggle, ring, patch), { minLength: 1, maxLength: 9 });

describe('any seam map', () => {
  it('is whole and consistent, whatever was drawn', () => {
    fc.assert(
      fc.property(mess, fc.constantFrom(0.001, 0.3, 3), (lines, snap) => {
        const block = drawing(lines);
        const { map, findings } = buildSeamMap(block, { snap });
        holds(map);
        // with the outline filled in, patches and holes leave nothing uncounted
        const named = findings.filter(({ code }) => code === 'line-left-out').length;
        expect(map.seams.length + (map.outline ? 1 : 0) + named).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });

  it('of real borders is consistent', () => {
    for (const state of ['19', '50', '08', '26']) holds(buildSeamMap(countyBlock(state)).map);
  });
});

describe('borders drawn twice, each patch by itself', () => {
  /** County polygons from the atlas, every one a filled shape of its own, each coordinate off by up to `most`. */
  const noisy = (clean: SeamMap, most: number, seed: number) => {
    const off = fc.double({ min: -most, max: most, noNaN: true });
    const [noise] = fc.sample(fc.array(off, { minLength: 1500, maxLength: 1500 }), { numRuns: 1, seed });
    let k = 0;
    const next = () => noise[k++ % noise.length];
    return clean.patches.map(({ boundary }, i) => {
      const points: Point[] = [];
      for (let p = 0; p + 2 < boundary.length; p += 2) {
        points.push([boundary[p] + next(), boundary[p + 1] + next()]);
      }
      return drawn([...points, points[0]], `#${(0x100000 + i).toString(16)}`);
    });
  };

  it.each(['50', '56', '19'])('are one seam each: state %s', (state) => {
    const clean = buildSeamMap(countyBlock(state)).map;
    const { map, findings } = buildSeamMap(drawing(noisy(clean, 0.08, 7), 300));
    holds(map);
    expect(findings.filter(({ level }) => level !== 'note')).toEqual([]);
    expect(map.patches).toHaveLength(clean.patches.length);
    expect(map.junctions).toHaveLength(clean.junctions.length);
    expect(new Set(map.patches.map(({ fabric }) => fabric)).size).toBe(clean.patches.length);
  });

  it('give a consistent map even where they stray beyond the tolerance', () => {
    const clean = buildSeamMap(countyBlock('19')).map;
    for (const seed of [1, 2, 3, 4]) holds(buildSeamMap(drawing(noisy(clean, 0.2, seed), 300)).map);
  });
});
