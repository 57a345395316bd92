import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contrast } from '../../src/color/contrast.js';
import { fabricOf, plainFabric, showing } from '../../src/color/fabric.js';

const color = fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, '0')}`);
const fabric = fc
  .array(fc.record({ hex: color, share: fc.integer({ min: 1, max: 9 }) }), { minLength: 1, maxLength: 5 })
  .map((colors) => fabricOf(colors, 0));

describe('a thread on a fabric', () => {
  it('has on a plain fabric the contrast of the two colors', () => {
    fc.assert(fc.property(color, color, (a, b) => showing([a], plainFabric(b)).contrast === contrast(a, b)));
  });

  it('shows no better than on the color that suits it most, no worse than on the one that suits it least', () => {
    fc.assert(
      fc.property(color, fabric, (thread, on) => {
        const ratios = on.colors.map(({ hex }) => contrast(thread, hex));
        const shown = showing([thread], on).contrast;
        return shown >= Math.min(...ratios) && shown <= Math.max(...ratios);
      }),
    );
  });

  it('is lost on a print that has its own color in half of it, and shows where that is a small share', () => {
    const print = (white: number) =>
      fabricOf(
        [
          { hex: '#ffffff', share: white },
          { hex: '#203050', share: 1 - white },
        ],
        0.4,
      );
    expect(showing(['#ffffff'], print(0.5)).contrast).toBe(1);
    expect(showing(['#ffffff'], print(0.2)).contrast).toBeGreaterThan(2.5);
    expect(showing(['#ffffff'], print(0.2)).seen).toBeCloseTo(0.8, 9);
  });

  it('of several colors is lost where two of three melt in', () => {
    const on = plainFabric('#f0f0f0');
    expect(showing(['#ffffff', '#eeeeee', '#000000'], on).contrast).toBeLessThan(1.6);
    expect(showing(['#ffffff', '#101010', '#000000'], on).contrast).toBeGreaterThan(2.5);
  });

  it('has shares that add up to one, the largest first, whatever measure they came in', () => {
    fc.assert(
      fc.property(fabric, ({ colors }) => {
        const sum = colors.reduce((total, { share }) => total + share, 0);
        return (
          Math.abs(sum - 1) < 1e-9 && colors.every(({ share }, i) => i === 0 || share <= colors[i - 1].share)
        );
      }),
    );
  });
});
