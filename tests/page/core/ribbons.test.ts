import { describe, expect, it } from 'vitest';
import { drawnOf } from '../../../page/core/drawn.js';
import { lyingRibbon } from '../../../page/draw/by-hand.js';
import { lyingOn } from '../../../page/draw/table.js';
import { dress } from '../../../src/dress.js';
import { dressingOf, oneSeam } from '../../asked/dressed-line.js';
import { builtIn } from '../../stitches/dictionary.js';

const laid = { name: 'satin ribbon', width: 6, hex: '#b78a94', thread: 0 };
const drawn = (work: Parameters<typeof dressingOf>[0]) =>
  drawnOf(dress(oneSeam, dressingOf(work), builtIn), oneSeam);

describe('what is laid by hand', () => {
  it('lies along its seam, as wide as it is', () => {
    const [ribbon] = drawn({ laid }).laid;
    expect([ribbon.width, ribbon.hex]).toEqual([6, '#b78a94']);
    // the seam runs level at y = 100 from x = 30 to 110
    const [line] = ribbon.lines;
    const ys = line.filter((_, i) => i % 2 === 1);
    expect(Math.max(...ys.map((y) => Math.abs(y - 100)))).toBeLessThan(0.2);
    const [box] = lyingRibbon(ribbon).boxes();
    expect(box.bottom - box.top).toBeGreaterThan(6);
    expect(box.left).toBeLessThan(32);
    expect(box.right).toBeGreaterThan(108);
  });

  it('lies over its placement line and under the rows that hold it', () => {
    const { block, stops, marks, laid: ribbons, keptClear } = drawn({ laid });
    const on = { block, threads: stops, marks, laid: ribbons, keptClear, touched: null, isLook: false };
    const kinds = lyingOn(on, 1, 4).map(({ key }) =>
      key.startsWith('ribbon') ? 'ribbon' : stops.find((stop) => stop.key === key)?.title.split(/[ ,]/)[0],
    );
    expect(kinds).toEqual([undefined, 'Placement', 'ribbon', 'Blanket']);
  });

  it('is nothing where nothing is laid', () => {
    expect(drawn({}).laid).toEqual([]);
  });
});
