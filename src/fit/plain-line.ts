import { frameFinder } from '../geometry/guide-frame.js';
import type { GuideLine } from '../geometry/guide-line.js';
import type { Chain } from './fit.js';

/** Stitches of a plain line, mm. Common practice. */
export const PLAIN_STITCH = 2.5;
/** A plain line shorter than this is no line but a lump, mm. */
export const SHORTEST_LINE = 1.6;

/** A part of a guide line, from and to in its u. */
export interface Part {
  readonly from: number;
  readonly to: number;
}

/** Straight stitches along parts of a line, `across` to its left, that go to the point in its corners. */
export function plainLines(
  guide: GuideLine,
  parts: readonly Part[],
  across: number,
  passes: number,
): Chain[] {
  return parts
    .filter(({ from, to }) => to - from >= SHORTEST_LINE)
    .map(({ from, to }) => {
      const corners = guide.corners.map(({ u }) => u).filter((u) => u > from + 1e-6 && u < to - 1e-6);
      const bounds = [from, ...corners, to];
      const finder = frameFinder(guide, 0, guide.u.length - 1);
      const nodes: number[] = [];
      bounds.slice(1).forEach((end, i) => {
        const start = bounds[i];
        const pieces = Math.max(1, Math.round((end - start) / PLAIN_STITCH));
        for (let k = i === 0 ? 0 : 1; k <= pieces; k++) {
          finder.at(start + ((end - start) * k) / pieces);
          const [x, y, theta] = finder.frame;
          nodes.push(x + across * Math.sin(theta), y - across * Math.cos(theta));
        }
      });
      return lineChain(nodes, false, passes);
    });
}

/** Parts that touch or overlap made one, ascending. */
export function joined(parts: readonly Part[]): Part[] {
  const all: { from: number; to: number }[] = [];
  for (const { from, to } of [...parts].sort((a, b) => a.from - b.from)) {
    const last = all[all.length - 1];
    if (last && from <= last.to + 1e-6) last.to = Math.max(last.to, to);
    else all.push({ from, to });
  }
  return all;
}

/** Straight legs from each place (x y x y ...) to the next, and on a ring back to the first. */
export function lineChain(nodes: readonly number[], ring: boolean, passes: number): Chain {
  const places = nodes.length / 2;
  const legs = ring ? places : places - 1;
  const to = Int32Array.from({ length: legs }, (_, i) => (i + 1) % places);
  return {
    units: legs,
    closed: ring,
    nodes: Float64Array.from(nodes),
    from: Int32Array.from({ length: legs }, (_, i) => i),
    to,
    legClass: new Uint16Array(legs),
    unit: Int32Array.from({ length: legs }, (_, i) => i),
    passes: new Uint8Array(legs).fill(passes),
    kind: Array.from({ length: legs }, () => 'straight' as const),
    size: new Float32Array(legs),
    pathStart: Int32Array.from({ length: legs + 1 }, (_, i) => 2 * i),
    path: Float64Array.from(
      [...to].flatMap((b, a) => [2 * a, 2 * a + 1, 2 * b, 2 * b + 1].map((k) => nodes[k])),
    ),
  };
}
