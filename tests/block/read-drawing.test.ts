import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { seamsJson } from '../../src/block/seams-json.js';
import { polylineLength } from '../../src/geometry/polyline.js';
import { countyBlock, countySvg } from '../fixtures/counties.js';

const source = { file: 'x.svg', stops: null, snap: 0.3, through: [] };
const panel = await readSvgBlock(
  readFileSync(new URL('../../gallery/demo/panel.svg', import.meta.url), 'utf8'),
  'demo/panel.svg',
  source,
);

describe('the pocket panel', () => {
  const { map, findings, name } = panel;

  it('is read at its size, without anything to look at', () => {
    expect([name, map.width, map.height, findings]).toEqual(['panel', 130, 180, []]);
  });

  it('has the twelve patches that were drawn, in their fabrics, and they cover it', () => {
    const svg = readFileSync(new URL('../../gallery/demo/panel.svg', import.meta.url), 'utf8');
    const drawn = [...svg.matchAll(/fill="(#[0-9a-f]{6})"/g)].map((match) => match[1]);
    expect(map.patches.map(({ fabric }) => fabric).sort()).toEqual(drawn.sort());
    expect(map.patches.reduce((sum, { area }) => sum + area, 0)).toBeCloseTo(130 * 180, 3);
    expect(polylineLength(map.outline!.points)).toBeCloseTo(620, 6);
  });

  it('has one Y, one X, and otherwise seams that butt into others', () => {
    const inner = map.junctions.filter(({ onOutline }) => !onOutline);
    expect(inner.filter(({ through }) => through === null)).toHaveLength(1);
    expect(inner.filter(({ arms }) => arms.length === 4)).toHaveLength(1);
    expect(inner.filter(({ arms, through }) => arms.length === 3 && through !== null).length).toBeGreaterThan(
      5,
    );
  });

  it('has one seam with a corner, and an arc of 44 mm radius whose length is a quarter circle', () => {
    expect(map.seams.filter(({ corners }) => corners.length > 0)).toHaveLength(1);
    const quarter = 22 * Math.PI;
    const arc = map.seams.find(({ points }) => Math.abs(polylineLength(points) / quarter - 1) < 1e-4);
    expect(arc?.corners).toEqual([]);
  });
});

describe('the record of a block', () => {
  const json = seamsJson(panel);

  it('has the published shape, and survives being written', () => {
    expect(Object.keys(json)).toEqual([
      'block',
      'outline',
      'seams',
      'junctions',
      'patches',
      'keepClear',
      'findings',
    ]);
    expect(Object.keys(json.seams[0])).toEqual(['id', 'lengthMm', 'closed', 'corners', 'points', 'sides']);
    expect(Object.keys(json.seams[0].sides[0])).toEqual(['fromMm', 'toMm', 'left', 'right']);
    expect(Object.keys(json.junctions[0])).toEqual(['at', 'seams', 'through', 'onOutline']);
    expect(Object.keys(json.patches[0])).toEqual(['id', 'areaMm2', 'fabric', 'boundary', 'holes']);
    expect(JSON.parse(JSON.stringify(json))).toEqual(json);
  });

  it('agrees with the map', () => {
    expect(json.block).toEqual({ widthMm: 130, heightMm: 180 });
    expect(json.outline!.at(-1)).toEqual(json.outline![0]);
    for (const { lengthMm, sides } of json.seams) expect(sides.at(-1)!.toMm).toBe(lengthMm);
    const ids = new Set(json.seams.map(({ id }) => id));
    for (const { seams } of json.junctions) expect(seams.every((id) => ids.has(id))).toBe(true);
  });
});

describe('a drawing of county borders', () => {
  it('gives the same block as the borders themselves', async () => {
    const block = await readSvgBlock(countySvg('50'), 'vermont.svg', source);
    expect(block.map.patches).toHaveLength(countyBlock('50').polygons);
    expect([block.map.width, block.map.height]).toEqual([200, 300]);
  });
});
