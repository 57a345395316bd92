import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import type { Stop } from '../../src/design/design.js';
import { drawDressed } from '../../src/draw/dressed-picture.js';
import { drawSeamMap } from '../../src/draw/map-picture.js';
import type { Dressed } from '../../src/dress.js';
import { readDst } from '../../src/formats/dst-read.js';
import { stopsOf } from '../../src/formats/stops.js';
import { piecedPanel } from '../fixtures/pieced-panel.js';
import { twoPatches } from './two-patches.js';

const stop = (title: string, weight: string, xy: number[]): Stop => ({
  title,
  kind: 'treatment',
  seams: [1],
  thread: { name: 'straw', hex: '#c8962e', weight },
  runs: { xy: new Float64Array(xy), start: Int32Array.of(0, xy.length / 2) },
});

function dressed(...stops: Stop[]): Dressed {
  return {
    block: {
      name: 'cushion & <lid>',
      map: twoPatches,
      existing: null,
      stops: [],
      origin: [0, 0],
      findings: [],
    },
    design: { before: null, after: null, stops, origin: [0, 0], name: 'cushion' },
    lines: [],
    keepClear: [],
    findings: [],
  } as unknown as Dressed;
}

interface Seen {
  readonly name: string;
  readonly attributes: Record<string, string>;
}

/** Elements of a document in drawing order; throws when it is not well-formed XML. */
function elementsOf(svg: string): Seen[] {
  const seen: Seen[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) =>
    seen.push({ name, attributes: { ...attributes } as Record<string, string> }),
  );
  parser.write(svg).close();
  return seen;
}

describe('the picture of a dressed block', () => {
  it('is at actual size: user units are millimeters', () => {
    const [root] = elementsOf(drawDressed(dressed()));
    expect(root.attributes).toMatchObject({ width: '60mm', height: '50mm', viewBox: '0 0 60 50' });
  });

  it('grows by whole millimeters where thread reaches past the block', () => {
    const [root] = elementsOf(drawDressed(dressed(stop('edge', 'No. 40', [-2.5, 10, 5, 10]))));
    expect(root.attributes.viewBox).toBe('-3 0 63 50');
  });

  it('shows patches in their fabric, and muted cloth where none is known', () => {
    const fills = elementsOf(drawDressed(dressed())).map(({ attributes }) => attributes.fill);
    expect(fills).toContain('#6d7743');
    expect(fills.filter((fill) => /^#[a-f0-9]{6}$/.test(fill ?? '')).length).toBe(2);
  });

  it('lies on muted cloth all over where lines close no patches', () => {
    const bare = dressed(stop('a', 'No. 40', [0, 30, 5, 55]));
    const open = { ...bare, block: { ...bare.block, map: { ...twoPatches, patches: [], outline: null } } };
    const cloth = elementsOf(drawDressed(open)).find(({ name }) => name === 'rect');
    expect(cloth?.attributes).toMatchObject({ x: '0', y: '0', width: '60', height: '56' });
  });

  it('draws thread at the width at which it is laid', () => {
    for (const [weight, width] of [
      ['No. 40', '0.4'],
      ['No. 12', '0.65'],
    ]) {
      const widths = elementsOf(drawDressed(dressed(stop('a', weight, [0, 10, 5, 10])))).map(
        ({ attributes }) => attributes['stroke-width'],
      );
      expect(widths).toContain(width);
    }
  });

  it('has one titled group a color stop, in the order sewn, so that later thread lies over earlier', () => {
    const svg = drawDressed(
      dressed(stop('first', 'No. 40', [0, 0, 5, 5]), stop('second', 'No. 40', [0, 5, 5, 0])),
    );
    expect(svg.indexOf('<title>first</title>')).toBeGreaterThan(0);
    expect(svg.indexOf('<title>second</title>')).toBeGreaterThan(svg.indexOf('<title>first</title>'));
  });

  it('has one titled group a color stop that came with the block too', () => {
    const plain = dressed(stop('first', 'No. 40', [0, 0, 5, 5]));
    const existing = readDst(piecedPanel(), 'panel.dst');
    const svg = drawDressed({ ...plain, block: { ...plain.block, existing } });
    const sewn = stopsOf(existing).filter(({ stitches }) => stitches > 0);
    const missing = sewn.filter(({ stop }) => !svg.includes(`<title>stop ${stop} of the block</title>`));
    expect([sewn.length > 20, missing.length]).toEqual([true, 0]);
    elementsOf(svg);
  });

  it('takes few elements: some a leg, not some a stitch', () => {
    const long = Array.from({ length: 4800 }, (_, i) => [i / 100, 10 + Math.sin(i / 9)]).flat();
    const count = elementsOf(drawDressed(dressed(stop('wave', 'No. 40', long)))).length;
    expect(count).toBeLessThan(4800 / 10);
  });
});

describe('the numbered picture of the seams', () => {
  it('names every seam, patch and the outline, and is well-formed', () => {
    const svg = drawSeamMap(twoPatches, 'a "b" & c');
    elementsOf(svg);
    for (const name of ['seam 1', 'patch 1, 1500 mm²', 'patch 2, 1500 mm²', 'outline']) {
      expect(svg).toContain(`<title>${name}</title>`);
    }
  });
});
