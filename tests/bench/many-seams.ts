import type { DrawnLine, LineDrawing } from '../../src/block/drawn-line.js';
import { fromPoints } from '../../src/geometry/polyline.js';

type XY = readonly [number, number];

/** A seeded generator of numbers in [0, 1): Park and Miller's minimal standard (CACM 31, 1988). */
export function seeded(seed: number): () => number {
  let state = (seed % 2147483646) + 1;
  return () => {
    state = (state * 16807) % 2147483647;
    return (state - 1) / 2147483646;
  };
}

/**
 * A square block cut again and again, as crazy patches are: every patch wider than `patch` mm is cut across its longer
 * way by a line that slants a little, a third of them bent. Seeded.
 */
export function cutBlock(size: number, patch: number, seed: number): LineDrawing {
  const random = seeded(seed);
  const lines: DrawnLine[] = [];
  const add = (points: readonly XY[], closed = false) =>
    lines.push({ points: fromPoints(points), closed, fill: null, where: `line ${lines.length + 1}` });
  add(
    [
      [0, 0],
      [size, 0],
      [size, size],
      [0, size],
      [0, 0],
    ],
    true,
  );
  const todo: XY[][] = [
    [
      [0, 0],
      [size, 0],
      [size, size],
      [0, size],
    ],
  ];
  while (todo.length) {
    const face = todo.pop()!;
    const xs = face.map(([x]) => x);
    const ys = face.map(([, y]) => y);
    const wide = Math.max(...xs) - Math.min(...xs);
    const high = Math.max(...ys) - Math.min(...ys);
    if (Math.max(wide, high) < patch) continue;
    const heading = (wide > high ? Math.PI / 2 : 0) + (random() - 0.5) * 0.5;
    const cx = xs.reduce((a, b) => a + b, 0) / xs.length + (random() - 0.5) * 0.2 * wide;
    const cy = ys.reduce((a, b) => a + b, 0) / ys.length + (random() - 0.5) * 0.2 * high;
    const side = ([x, y]: XY) => (x - cx) * -Math.sin(heading) + (y - cy) * Math.cos(heading);
    const halves: [XY[], XY[]] = [[], []];
    const cut: XY[] = [];
    face.forEach((a, i) => {
      const b = face[(i + 1) % face.length];
      const [sa, sb] = [side(a), side(b)];
      halves[sa >= 0 ? 0 : 1].push(a);
      if (sa >= 0 === sb >= 0) return;
      const t = sa / (sa - sb);
      const p: XY = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
      cut.push(p);
      halves[0].push(p);
      halves[1].push(p);
    });
    if (cut.length !== 2) continue;
    add(cut);
    todo.push(...halves);
  }
  return { width: size, height: size, origin: [0, 0], lines };
}
