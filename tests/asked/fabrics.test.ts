import { describe, expect, it } from 'vitest';
import { patchOf, referenceToPatch, withFabrics } from '../../src/asked/fabrics.js';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { placedWork } from '../../src/placed.js';

const source = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };

/** A panel of 60 x 40 mm with upright seams at the given places. */
const panel = (...at: number[]) =>
  readSvgBlock(
    `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">
      ${[0, ...at].map((x, i) => `<rect x="${x}" y="0" width="${(at[i] ?? 60) - x}" height="40" fill="#c0c0c${i}"/>`).join('')}</svg>`,
    'panel.svg',
    source,
  );

const navy = { colors: [{ hex: '#203050', share: 1 }] };

describe('fabrics that a dressing names', () => {
  it('replace those of the drawing, in the patch alone that they name', async () => {
    const block = await panel(20);
    const { map, findings } = withFabrics(block, {
      fabrics: [{ patch: referenceToPatch(block.map.patches[1]), ...navy }],
    });
    expect(map.patches.map(({ fabric }) => fabric)).toEqual(['#c0c0c0', '#203050']);
    expect(findings).toEqual(block.findings);
  });

  it('know their patch again by its place when a seam more has changed its number', async () => {
    const before = await panel(40);
    const right = referenceToPatch(before.map.patches[1]);
    const after = await panel(15, 40);
    expect(right.id).toBe(2);
    expect(patchOf(after.map, right)!.id).toBe(3);
  });

  it('are told when their patch is gone', async () => {
    const block = await panel(20);
    const { findings } = withFabrics(block, { fabrics: [{ patch: { id: 7, at: [99, 20] }, ...navy }] });
    expect(findings.map(({ code, level }) => [code, level])).toEqual([['lost-fabric', 'warning']]);
  });

  it('by number alone mean the patch of that number', async () => {
    const { map } = withFabrics(await panel(20), { fabrics: [{ patch: { id: 2, at: null }, ...navy }] });
    expect(map.patches[1].fabric).toBe('#203050');
  });

  it('of several colors show the commonest, and keep all of them', async () => {
    const colors = [
      { hex: '#FFFFFF', share: 1 },
      { hex: '#203050', share: 3 },
    ];
    const { map } = withFabrics(await panel(20), {
      fabrics: [{ patch: { id: 1, at: null }, colors, busyness: 0.7 }],
    });
    expect(map.patches[0].fabric).toBe('#203050');
    expect(map.patches[0].print).toEqual({
      colors: [
        { hex: '#203050', share: 0.75 },
        { hex: '#ffffff', share: 0.25 },
      ],
      busyness: 0.7,
    });
  });

  it('stay in their patches when the block is made larger and turned', async () => {
    const block = await panel(20);
    const plain: Dressing = {
      format: 'seamwright-dressing',
      version: 1,
      block: source,
      ends: 'tuck',
      outline: 'trim',
      gap: 0.6,
      treatments: [],
      threads: [],
      hoop: null,
      after: null,
      seed: 1,
    };
    const fabrics = [{ patch: referenceToPatch(block.map.patches[0]), ...navy }];
    const placed = placedWork(block, {
      ...plain,
      fabrics,
      block: { ...plain.block, scale: 1.5, turn: 90 },
    });
    expect(placed.block.map.patches.map(({ fabric }) => fabric)).toEqual(['#203050', '#c0c0c1']);
  });
});
