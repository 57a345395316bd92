import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { readStitchBlock } from '../../src/block/read-stitch-file.js';
import type { SeamMap } from '../../src/block/seam-map.js';
import { distance, type Point } from '../../src/geometry/point.js';
import { toPoints } from '../../src/geometry/polyline.js';
import { GROUND, PANEL_STOPS, piecedPanel, SEAM_STOPS } from '../fixtures/pieced-panel.js';
import { nearestTo } from './sewn-measure.js';

const drawing = new URL('../../gallery/demo/panel.svg', import.meta.url);
const source = { file: '', stops: null, snap: 0.3, through: [] };
const sewn = readStitchBlock(piecedPanel(), 'out/panel-pieced.dst', { ...source, stops: SEAM_STOPS });
const drawn = await readSvgBlock(readFileSync(drawing, 'utf8'), 'panel.svg', source);

const seamLines = (map: SeamMap): Point[][] => map.seams.map((seam) => toPoints(seam.points));
const at = ([x, y]: Point) => `${x.toFixed(1)}, ${y.toFixed(1)}`;

/** The seam of the two bottom patches is joined beforehand, and so in the drawing alone. */
const JOINED_BEFOREHAND: readonly [Point, Point] = [
  [44, 132],
  [52, 180],
];

describe('the pieced stitch file of the apron panel', () => {
  it('gives the seams of its drawing, within 0.2 mm', () => {
    const read = seamLines(sewn.map);
    const others = seamLines(drawn.map).filter((line) => !endsNear(line, JOINED_BEFOREHAND[1]));
    expect(others.length).toBe(drawn.map.seams.length - 1);
    expect(read.length).toBe(others.length + 1);
    for (const line of others) expect(nearestTo(line, read)).toBeLessThan(0.2);
    const sewnPart: Point[] = [
      [34.727, 76.364],
      [44, 132],
    ];
    expect(nearestTo(sewnPart, read)).toBeLessThan(0.2);
  });

  it('gives the junctions of its drawing, and the same seams run through them', () => {
    const held = drawn.map.junctions.filter((j) => distance(j.at, JOINED_BEFOREHAND[1]) > 1);
    expect(sewn.map.junctions.length).toBe(held.length);
    for (const j of held) {
      const same = sewn.map.junctions.filter((other) => distance(other.at, j.at) < 0.2);
      expect(same.length, at(j.at)).toBe(1);
      const joinedHere = distance(j.at, JOINED_BEFOREHAND[0]) < 1 ? 1 : 0;
      expect(same[0].arms.length + joinedHere, at(j.at)).toBe(j.arms.length);
      expect(same[0].onOutline).toBe(j.onOutline);
      if (!joinedHere) expect(same[0].through, at(j.at)).toBe(j.through);
    }
  });

  it('has the outline of the panel, its fold and its curve', () => {
    expect(sewn.map.width).toBeCloseTo(130, 1);
    expect(sewn.map.height).toBeCloseTo(180, 1);
    expect(sewn.map.outline?.corners.length).toBe(4);
    expect(sewn.map.seams.flatMap((seam) => seam.corners).length).toBe(1);
    expect(sewn.map.patches.length).toBe(drawn.map.patches.length - 1);
  });

  it('says where its frame lies in the file: the hoop is centered on the panel', () => {
    expect(sewn.origin[0]).toBeCloseTo(-65, 1);
    expect(sewn.origin[1]).toBeCloseTo(-90, 1);
    expect(sewn.name).toBe('panel-pieced');
    expect(sewn.stops).toEqual(SEAM_STOPS);
    expect(sewn.existing?.kinds.length).toBeGreaterThan(1000);
  });

  it('is pieced in an order that can be sewn: every seam lies to one side of all before it', () => {
    const seams = Object.values(GROUND).map((seam) => seam.line);
    seams.forEach(([a, b], i) => {
      const hands = seams
        .slice(0, i)
        .flatMap((line) => line.map((p) => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])));
      const clear = hands.filter((hand) => Math.abs(hand) > 0.1 * distance(a, b));
      expect(new Set(clear.map(Math.sign)).size, `seam ${i + 1}`).toBeLessThanOrEqual(1);
    });
  });

  it('names as seams the stops that sew ground seams, placement lines and the outline', () => {
    expect(SEAM_STOPS.length).toBe(11);
    for (const stop of SEAM_STOPS) expect(PANEL_STOPS[stop - 1].title).toMatch(/^(seam|place|outline)/);
  });
});

const endsNear = (line: readonly Point[], p: Point): boolean =>
  [line[0], line[line.length - 1]].some((end) => distance(end, p) < 1);
