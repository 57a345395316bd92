import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitted, onBlock, zoomed } from '../../page/state/view.js';

const place = fc.double({ min: -500, max: 500, noNaN: true });
const scale = fc.double({ min: 1, max: 20, noNaN: true });

describe('the view of the block', () => {
  it('keeps the place under the finger when it comes nearer', () => {
    fc.assert(
      fc.property(
        scale,
        place,
        place,
        place,
        place,
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        (s, x, y, px, py, by) => {
          const view = { scale: s, x, y };
          const [ax, ay] = onBlock(view, px, py);
          const [bx, by2] = onBlock(zoomed(view, by, px, py), px, py);
          expect(Math.hypot(ax - bx, ay - by2)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('holds the whole block, in the middle', () => {
    const room = { width: 900, height: 700 };
    const view = fitted({ width: 130, height: 180 }, room);
    const [left, top] = onBlock(view, 0, 0);
    const [right, bottom] = onBlock(view, room.width, room.height);
    expect(Math.min(-left, -top, right - 130, bottom - 180)).toBeGreaterThan(0);
    expect(right - 130).toBeCloseTo(-left, 6);
    expect(bottom - 180).toBeCloseTo(-top, 6);
  });
});
