import { Bezier } from 'bezier-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildSeamMap } from '../../src/block/build-seam-map.js';
import {
  type DrawnSeam,
  OUTLINE,
  readSeamDrawing,
  type SeamDrawing,
  writeSeamDrawing,
} from '../../src/formats/seam-drawing.js';
import { readSvgDrawing } from '../../src/formats/svg-drawing.js';
import { nearestOnSegment } from '../../src/geometry/nearest.js';

const mm = fc.integer({ min: 1000, max: 199_000 }).map((thousandths) => thousandths / 1000);
const off = fc.option(
  fc
    .tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: 1, max: 9000 }))
    .map(([x, y]) => [x / 1000, y / 1000] as const),
);
const node = fc.record({ at: fc.tuple(mm, mm), before: off, after: off });
const line = (closed: boolean) =>
  fc.array(node, { minLength: 3, maxLength: 6 }).map((nodes): Omit<DrawnSeam, 'id'> => {
    const open = nodes.map((one, i) => ({
      ...one,
      before: !closed && i === 0 ? null : one.before,
      after: !closed && i === nodes.length - 1 ? null : one.after,
    }));
    return { closed, nodes: open };
  });
const drawings = fc
  .tuple(line(true), fc.array(fc.oneof(line(false), line(true)), { minLength: 1, maxLength: 5 }))
  .map(
    ([outline, lines]): SeamDrawing => ({
      width: 200,
      height: 200,
      outline: { id: OUTLINE, ...outline },
      lines: lines.map((one, i) => ({ id: i + 1, ...one })),
    }),
  );

describe('a drawing of seams', () => {
  it('is read back as it was written, point by point and number by number', () => {
    fc.assert(
      fc.property(drawings, (drawing) => {
        const text = writeSeamDrawing(drawing);
        const read = readSeamDrawing(text, 'drawing.svg')!;
        expect(writeSeamDrawing(read)).toBe(text);
        expect(read.lines.map(({ id, closed, nodes }) => [id, closed, nodes.map(({ at }) => at)])).toEqual(
          drawing.lines.map(({ id, closed, nodes }) => [id, closed, nodes.map(({ at }) => at)]),
        );
      }),
    );
  });

  it('is for the reader of all drawings what it is for the maker: every curve within 0.01 mm of a plain Bezier curve', async () => {
    await fc.assert(
      fc.asyncProperty(drawings, async (drawing) => {
        const { lines, width, height } = await readSvgDrawing(writeSeamDrawing(drawing), 'drawing.svg');
        expect([width, height]).toEqual([200, 200]);
        expect(lines.length).toBe(1 + drawing.lines.length);
        // bezier-js, from the controls themselves
        const worst = drawing.lines.flatMap(({ nodes, closed }, l) =>
          nodes.flatMap((from, i) => {
            if (!closed && i === nodes.length - 1) return [];
            const to = nodes[(i + 1) % nodes.length];
            const [a, b] = [from.after ?? [0, 0], to.before ?? [0, 0]];
            const curve = new Bezier([
              ...from.at,
              from.at[0] + a[0],
              from.at[1] + a[1],
              to.at[0] + b[0],
              to.at[1] + b[1],
              ...to.at,
            ]);
            const { points } = lines[l + 1];
            return [0.2, 0.5, 0.8].map((t) => {
              const p = curve.get(t);
              let least = Number.POSITIVE_INFINITY;
              for (let k = 0; k + 3 < points.length; k += 2) {
                const [ax, ay, bx, by] = points.subarray(k, k + 4);
                least = Math.min(least, nearestOnSegment([p.x, p.y], [ax, ay], [bx, by]).distance);
              }
              return least;
            });
          }),
        );
        expect(Math.max(...worst)).toBeLessThan(0.01);
      }),
      { numRuns: 25 },
    );
  });

  it('of an outline alone is a block of one patch, ready to be drawn on', async () => {
    const corners = [
      [0, 0],
      [120, 0],
      [120, 90],
      [0, 90],
    ] as const;
    const outline = {
      id: OUTLINE,
      closed: true,
      nodes: corners.map((at) => ({ at, before: null, after: null })),
    };
    const text = writeSeamDrawing({ width: 120, height: 90, outline, lines: [] });
    const { map } = buildSeamMap(await readSvgDrawing(text, 'empty.svg'));
    expect(map.seams).toEqual([]);
    expect(map.patches.map(({ area }) => area)).toEqual([120 * 90]);
  });

  it('is no drawing of another hand, which may hold what lines cannot say', () => {
    const other =
      '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"><path d="M0 0L9 9"/></svg>';
    expect(readSeamDrawing(other, 'other.svg')).toBeNull();
    const more = writeSeamDrawing({ width: 9, height: 9, outline: null, lines: [] }).replace(
      '</svg>',
      '<path d="M0 0L9 9"/></svg>',
    );
    expect(readSeamDrawing(more, 'more.svg')).toBeNull();
  });
});
