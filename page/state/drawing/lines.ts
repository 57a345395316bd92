import {
  type DrawnSeam,
  OUTLINE,
  pieceOf,
  type SeamDrawing,
  type SeamNode,
} from '../../../src/formats/seam-drawing.js';
import { bentThrough, cutCubic, smoothThrough } from '../../../src/geometry/bend.js';
import { between, distance, type Point } from '../../../src/geometry/point.js';
import { toPoints } from '../../../src/geometry/polyline.js';
import { pointsOfSeam } from '../../core/drawn-lines.js';

/** Changes of a drawing: each gives a new one and leaves the old as it was. */

export const allLines = ({ outline, lines }: SeamDrawing): readonly DrawnSeam[] =>
  outline ? [...lines, outline] : lines;

export const lineOf = (drawing: SeamDrawing, id: number): DrawnSeam | null =>
  allLines(drawing).find((line) => line.id === id) ?? null;

export function withLine(drawing: SeamDrawing, line: DrawnSeam): SeamDrawing {
  if (line.id === OUTLINE) return { ...drawing, outline: line };
  return { ...drawing, lines: drawing.lines.map((one) => (one.id === line.id ? line : one)) };
}

/** One more line; its number is one that no other has. */
export function withNewLine(
  drawing: SeamDrawing,
  nodes: readonly SeamNode[],
  closed = false,
): { readonly drawing: SeamDrawing; readonly id: number } {
  const id = 1 + Math.max(0, ...drawing.lines.map((line) => line.id));
  return { drawing: { ...drawing, lines: [...drawing.lines, { id, closed, nodes }] }, id };
}

/** The outline stays: a block has one. */
export const withoutLine = (drawing: SeamDrawing, id: number): SeamDrawing => ({
  ...drawing,
  lines: drawing.lines.filter((line) => line.id !== id),
});

const withNode = (line: DrawnSeam, n: number, change: (node: SeamNode) => SeamNode): DrawnSeam => ({
  ...line,
  nodes: line.nodes.map((node, i) => (i === n ? change(node) : node)),
});

/** A node elsewhere; its curve goes along. */
export const withNodeAt = (line: DrawnSeam, n: number, at: Point): DrawnSeam =>
  withNode(line, n, (node) => ({ ...node, at }));

export const isLastStretch = ({ nodes, closed }: DrawnSeam, s: number): boolean =>
  s === nodes.length - (closed ? 1 : 2);
export const stretchCount = ({ nodes, closed }: DrawnSeam): number => nodes.length - (closed ? 0 : 1);

/** The place half-way along a stretch, by its curve's own measure. */
export function middleOf({ nodes }: DrawnSeam, s: number): Point {
  const piece = pieceOf(nodes, s);
  if (piece.kind !== 'bezier') return between(nodes[s].at, nodes[(s + 1) % nodes.length].at, 0.5);
  return cutCubic(piece.control as readonly [Point, Point, Point, Point], 0.5)[0][3];
}

/** A stretch bent so that it passes half-way through a place; straight where the place is on its chord. */
export function bent(line: DrawnSeam, s: number, through: Point, straight?: number): DrawnSeam {
  const next = (s + 1) % line.nodes.length;
  const [a, b] = [line.nodes[s].at, line.nodes[next].at];
  const controls = bentThrough(a, b, through, straight);
  const after = controls && off(a, controls[0]);
  const before = controls && off(b, controls[1]);
  return withNode(
    withNode(line, s, (node) => ({ ...node, after })),
    next,
    (node) => ({ ...node, before }),
  );
}

const off = (from: Point, to: Point): Point => [to[0] - from[0], to[1] - from[1]];

/** One more node half-way along a stretch; the line runs as it did. */
export function divided(line: DrawnSeam, s: number): DrawnSeam {
  const { nodes } = line;
  const next = (s + 1) % nodes.length;
  const piece = pieceOf(nodes, s);
  if (piece.kind !== 'bezier') {
    const node: SeamNode = { at: middleOf(line, s), before: null, after: null };
    return { ...line, nodes: [...nodes.slice(0, s + 1), node, ...nodes.slice(s + 1)] };
  }
  const [first, second] = cutCubic(piece.control as readonly [Point, Point, Point, Point], 0.5);
  const at = first[3];
  const changed = nodes.map((node, i) => {
    const after = i === s ? off(node.at, first[1]) : node.after;
    return { ...node, after, before: i === next ? off(node.at, second[2]) : node.before };
  });
  const node: SeamNode = { at, before: off(at, first[2]), after: off(at, second[1]) };
  return { ...line, nodes: [...changed.slice(0, s + 1), node, ...changed.slice(s + 1)] };
}

/** Without a node; null where too few would be left. */
export function withoutNode(line: DrawnSeam, n: number): DrawnSeam | null {
  if (line.nodes.length <= (line.closed ? 3 : 2)) return null;
  const nodes = line.nodes.filter((_, i) => i !== n);
  if (line.closed) return { ...line, nodes };
  const last = nodes.length - 1;
  return {
    ...line,
    nodes: nodes.map((node, i) => ({
      ...node,
      before: i === 0 ? null : node.before,
      after: i === last ? null : node.after,
    })),
  };
}

export const isRound = ({ before, after }: SeamNode): boolean =>
  before !== null &&
  after !== null &&
  Math.abs(before[0] * after[1] - before[1] * after[0]) <=
    0.05 * distance([0, 0], before) * distance([0, 0], after);

/** A node that the line runs through smoothly, or that is a corner. Ends of lines have neither. */
export function turned(line: DrawnSeam, n: number, round: boolean): DrawnSeam {
  const { nodes, closed } = line;
  if (!closed && (n === 0 || n === nodes.length - 1)) return line;
  if (!round) return withNode(line, n, (node) => ({ ...node, before: null, after: null }));
  const [previous, next] = [nodes[(n - 1 + nodes.length) % nodes.length], nodes[(n + 1) % nodes.length]];
  const [before, after] = smoothThrough(previous.at, nodes[n].at, next.at);
  return withNode(line, n, (node) => ({ ...node, before, after }));
}

/** Nodes at places: straight between them, or a curve that runs smoothly through them all. */
export function nodesThrough(places: readonly Point[], curved: boolean): SeamNode[] {
  return places.map((at, i) => {
    if (!curved || i === 0 || i === places.length - 1) return { at, before: null, after: null };
    const [before, after] = smoothThrough(places[i - 1], at, places[i + 1]);
    return { at, before, after };
  });
}

/** What was begun, as it will lie: a curve is seen as a curve. */
export function lineBegun(all: readonly Point[], curved: boolean): readonly Point[] {
  if (!curved || all.length < 3) return all;
  return toPoints(pointsOfSeam({ id: OUTLINE, nodes: nodesThrough(all, true), closed: false }));
}
