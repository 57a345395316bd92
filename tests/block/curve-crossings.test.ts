import fc from 'fast-check';
import paperCore from 'paper/dist/paper-core.js';
import { describe, expect, it } from 'vitest';
import { networkOf } from '../../src/block/network.js';
import { cutIntoPieces } from '../../src/block/pieces.js';
import { snapEnds } from '../../src/block/snap-ends.js';
import { flattenSubpath } from '../../src/formats/svg-flatten.js';
import { readPathData } from '../../src/formats/svg-path.js';
import { cubicsOfArc } from '../../src/geometry/ellipse.js';
import type { Point } from '../../src/geometry/point.js';
import { drawing } from './draw.js';

const core = paperCore as unknown as { PaperScope: new () => paper.PaperScope };
const scope = new core.PaperScope();
scope.setup(new scope.Size(1, 1));

/** Lines as paper has them; arcs as short cubics, since paper's own of a quarter turn stray by 0.03 %. */
function inPaper(data: string): paper.Path {
  const path = new scope.Path({ insert: false });
  const [{ start, pieces }] = readPathData(data, 'test');
  path.moveTo([...start]);
  for (const piece of pieces) {
    if (piece.kind === 'straight') path.lineTo([...piece.to]);
    else {
      const parts = piece.kind === 'arc' ? cubicsOfArc(piece.arc) : [piece.control.slice(1)];
      for (const [a, b, to] of parts) path.cubicCurveTo([...a], [...b], [...to]);
    }
  }
  return path;
}

/** Where lines meet, by paper (fat lines: Sederberg and Nishita, Computer-Aided Design 22, 1990; from memory). */
function theirs(first: string, second: string): { at: Point; angle: number }[] {
  return inPaper(first)
    .getIntersections(inPaper(second))
    .map((found) => {
      const [t, s] = [found.tangent, found.intersection.tangent];
      return { at: xy(found.point), angle: Math.asin(Math.min(1, Math.abs(t.cross(s)))) };
    });
}

const xy = ({ x, y }: paper.Point): Point => [x, y];

/** Where more than two edges end, by the network of both lines. */
function ours(first: string, second: string): Point[] {
  const lines = [first, second].map((d) => flattenSubpath(readPathData(d, 'test')[0])!.points);
  const block = drawing(
    lines.map((points) => ({ points, closed: false, fill: null, where: 'test' })),
    200,
  );
  const { pieces } = cutIntoPieces(block.lines, SNAP);
  const { nodes, edges } = networkOf(snapEnds(pieces, SNAP), SNAP);
  const degree = nodes.map(() => 0);
  for (const { from, to } of edges) {
    degree[from]++;
    degree[to]++;
  }
  return nodes.filter((_, i) => degree[i] > 2);
}

/** Small enough that no end is drawn to the other line, so that only crossings are found. */
const SNAP = 1e-4;
/** Lines that meet at less than this, radians, share a point whose place along them nobody can tell to 0.01 mm. */
const GRAZE = 0.2;
const far = (p: Point, all: readonly Point[]) =>
  Math.min(...all.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1])), Number.POSITIVE_INFINITY);

const number = fc.integer({ min: 0, max: 15000 }).map((v) => v / 100);
/** Its control points go from left to right, so that it does not cross itself: one library finds more of that. */
const cubic = fc
  .array(fc.noBias(number), { minLength: 8, maxLength: 8 })
  .filter(([a, b, c, d]) => Math.max(a, b, c, d) - Math.min(a, b, c, d) > 5)
  .map(([a, b, c, d, ...y]) => {
    const x = [a, b, c, d].sort((p, q) => p - q);
    return `M${x[0]} ${y[0]} C${[1, 2, 3].map((i) => `${x[i]} ${y[i]}`).join(' ')}`;
  });
const arc = fc
  .tuple(
    fc.array(fc.noBias(number), { minLength: 4, maxLength: 4 }),
    fc.integer({ min: 20, max: 90 }),
    fc.boolean(),
    fc.boolean(),
  )
  .filter(([[x0, y0, x1, y1]]) => Math.hypot(x1 - x0, y1 - y0) > 5)
  .map(([[x0, y0, x1, y1], r, large, sweep]) => `M${x0} ${y0} A${r} ${r} 0 ${+large} ${+sweep} ${x1} ${y1}`);

describe('where curves cross', () => {
  it.each([
    ['cubics', cubic, cubic],
    ['arcs', arc, arc],
    ['a cubic and an arc', cubic, arc],
  ])('is found to 0.01 mm, as by another library: %s', (_, a, b) => {
    let met = 0;
    fc.assert(
      fc.property(a, b, (first, second) => {
        const [they, we] = [theirs(first, second), ours(first, second)];
        const clear = they.filter(({ angle }) => angle > GRAZE).map(({ at }) => at);
        met += clear.length;
        for (const at of clear) expect(far(at, we)).toBeLessThan(0.01);
        if (clear.length < they.length) return;
        for (const at of we) expect(far(at, clear)).toBeLessThan(0.01);
      }),
      { numRuns: 80 },
    );
    expect(met).toBeGreaterThan(15);
  });
});
