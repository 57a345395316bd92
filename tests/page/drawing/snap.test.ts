import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { footOn, pointsOfSeam } from '../../../page/core/drawn-lines.js';
import { withLineFollowed } from '../../../page/state/drawing/followed.js';
import {
  allLines,
  bent,
  lineOf,
  nodesThrough,
  withNewLine,
  withNodeAt,
} from '../../../page/state/drawing/lines.js';
import { snapped } from '../../../page/state/drawing/snap.js';
import { OUTLINE, type SeamDrawing } from '../../../src/formats/seam-drawing.js';
import { distance, type Point } from '../../../src/geometry/point.js';

const SIZE = 150;
const empty: SeamDrawing = {
  width: SIZE,
  height: SIZE,
  outline: {
    id: OUTLINE,
    closed: true,
    nodes: nodesThrough(
      [
        [0, 0],
        [SIZE, 0],
        [SIZE, SIZE],
        [0, SIZE],
      ],
      false,
    ),
  },
  lines: [],
};
const REACH = 6;
const mm = fc.integer({ min: -100, max: 10 * SIZE + 100 }).map((tenths) => tenths / 10);
const place = fc.tuple(mm, mm);
const inside = fc.integer({ min: 200, max: 10 * SIZE - 200 }).map((tenths) => tenths / 10);

/** Lines as a maker draws them: both ends drawn to what is near, some bent. */
const drawings = fc
  .array(fc.record({ from: place, to: place, by: fc.tuple(inside, inside), isBent: fc.boolean() }), {
    minLength: 1,
    maxLength: 7,
  })
  .map((strokes) =>
    strokes.reduce((drawing, { from, to, by, isBent }) => {
      const ends = [from, to].map((p) => snapped(p, drawing, REACH).at);
      if (distance(ends[0], ends[1]) < 20) return drawing;
      const added = withNewLine(drawing, nodesThrough(ends, false));
      if (!isBent) return added.drawing;
      const line = bent(lineOf(added.drawing, added.id)!, 0, by);
      return { ...added.drawing, lines: added.drawing.lines.map((one) => (one.id === line.id ? line : one)) };
    }, empty),
  )
  .filter(({ lines }) => lines.length > 0);

const offLine = (p: Point, drawing: SeamDrawing, id: number) =>
  footOn(pointsOfSeam(lineOf(drawing, id)!), p).distance;

describe('a place that is drawn to what is near', () => {
  it('lies on it, and is moved no further than the reach; what is near nothing stays, within the block', () => {
    fc.assert(
      fc.property(drawings, place, (drawing, p) => {
        const { at, on } = snapped(p, drawing, REACH);
        const lines = allLines(drawing);
        const offs = lines.map(({ id }) => offLine(at, drawing, id));
        const isIn = p.every((c) => c >= 0 && c <= SIZE);
        if (on) expect(Math.min(...offs)).toBeLessThan(1e-6);
        else expect(Math.min(...lines.map(({ id }) => offLine(p, drawing, id)))).toBeGreaterThan(REACH);
        if (isIn) expect(distance(at, p)).toBeLessThanOrEqual(on ? REACH : 0);
        expect(at.every((c) => c >= 0 && c <= SIZE)).toBe(true);
        // a point where lines end or turn is meant rather than the line through it
        const points = lines.flatMap(({ nodes }) => nodes.map((node) => distance(node.at, p)));
        if (Math.min(...points) <= REACH)
          expect([on, distance(at, p)]).toEqual(['point', Math.min(...points)]);
      }),
    );
  });

  it('is not drawn to the line that it is a point of', () => {
    const { drawing, id } = withNewLine(
      empty,
      nodesThrough(
        [
          [20, 75],
          [130, 75],
        ],
        false,
      ),
    );
    expect(snapped([60, 76], drawing, REACH)).toMatchObject({ on: 'seam', at: [60, 75] });
    expect(snapped([60, 76], drawing, REACH, id)).toEqual({ on: null, at: [60, 76] });
  });
});

describe('a line that is moved', () => {
  it('takes ends that stand on it along, so that they stand on it still, and leaves all else where it is', () => {
    fc.assert(
      fc.property(drawings, fc.nat(20), fc.nat(1), inside, inside, (drawing, l, end, x, y) => {
        const { id } = drawing.lines[l % drawing.lines.length];
        const line = lineOf(drawing, id)!;
        const after = withLineFollowed(drawing, withNodeAt(line, end, [x, y]));
        for (const other of drawing.lines) {
          if (other.id === id) continue;
          const ends = [other.nodes[0].at, other.nodes[other.nodes.length - 1].at];
          const now = lineOf(after, other.id)!;
          ends.forEach((was, i) => {
            const is = now.nodes[i === 0 ? 0 : now.nodes.length - 1].at;
            if (offLine(was, drawing, id) <= 0.05) expect(offLine(is, after, id)).toBeLessThan(0.01);
            // an end on a line that nothing moved stays
            else if (
              allLines(drawing).every(
                (one) => lineOf(after, one.id) === one || offLine(was, drawing, one.id) > 0.05,
              )
            )
              expect(is).toEqual(was);
          });
        }
        expect(after.outline).toEqual(drawing.outline);
        expect(lineOf(after, id)!.nodes[end].at).toEqual([x, y]);
      }),
    );
  });
});
