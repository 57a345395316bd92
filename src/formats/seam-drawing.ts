import type { Point } from '../geometry/point.js';
import type { Piece, Subpath } from './svg-shape.js';
import { readShape } from './svg-shape.js';
import { readSvgTree, type SvgElement } from './svg-tree.js';

/** A block drawn by hand: its outline and the lines of its seams, which can be changed point by point. Millimeters. */
export interface SeamDrawing {
  readonly width: number;
  readonly height: number;
  /** null where the lines close nothing; its number is OUTLINE */
  readonly outline: DrawnSeam | null;
  readonly lines: readonly DrawnSeam[];
}

export interface DrawnSeam {
  /** tells it from the others for as long as it is there; from 1 */
  readonly id: number;
  readonly closed: boolean;
  readonly nodes: readonly SeamNode[];
}

/** A point that a line is drawn through; between two nodes without controls it is straight. */
export interface SeamNode {
  readonly at: Point;
  /** how far the curve's control points before and after it stand off; null where it has none */
  readonly before: Point | null;
  readonly after: Point | null;
}

export const OUTLINE = 0;
const GROUP = 'drawn-seams';

/** The drawing as SVG, true to 0.001 mm, which any drawing program opens. What is written is read back as it is. */
export function writeSeamDrawing({ width, height, outline, lines }: SeamDrawing): string {
  const size = `width="${short(width)}mm" height="${short(height)}mm" viewBox="0 0 ${short(width)} ${short(height)}"`;
  // a closed line alone is an outline only where it is a patch
  const fill = lines.length ? 'none' : '#e9e1d3';
  const paths = [
    ...(outline ? [`<path id="outline" fill="${fill}" d="${pathData(outline)}"/>`] : []),
    ...lines.map((line) => `<path id="line-${line.id}" d="${pathData(line)}"/>`),
  ];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size}>`,
    `  <g id="${GROUP}" fill="none" stroke="#3a2d24" stroke-width="0.3">`,
    ...paths.map((path) => `    ${path}`),
    '  </g>',
    '</svg>',
    '',
  ].join('\n');
}

/**
 * A drawing that writeSeamDrawing wrote; null for any other, which holds more than can be kept here.
 * @throws InputError when the text is no SVG
 */
export function readSeamDrawing(text: string, where: string): SeamDrawing | null {
  if (!text.includes(`id="${GROUP}"`)) return null;
  const root = readSvgTree(text, where);
  const group = root.children[0];
  const [, , width, height] = (root.attributes.viewBox ?? '').split(' ').map(Number);
  const isOurs = root.children.length === 1 && group.attributes.id === GROUP && width > 0 && height > 0;
  if (!isOurs || root.attributes.width !== `${short(width)}mm` || group.attributes.transform) return null;
  const lines: DrawnSeam[] = [];
  for (const element of group.children) {
    const line = lineOf(element, where);
    if (!line) return null;
    lines.push(line);
  }
  return {
    width,
    height,
    outline: lines.find(({ id }) => id === OUTLINE) ?? null,
    lines: lines.filter(({ id }) => id !== OUTLINE),
  };
}

function lineOf(element: SvgElement, where: string): DrawnSeam | null {
  const id =
    element.attributes.id === 'outline'
      ? OUTLINE
      : Number(/^line-(\d+)$/.exec(element.attributes.id ?? '')?.[1]);
  if (element.name !== 'path' || element.attributes.transform || !Number.isInteger(id)) return null;
  const subpaths = readShape(element, { width: 0, height: 0 }, where);
  return subpaths.length === 1 ? seamOfSubpath(id, subpaths[0]) : null;
}

/** Null for arcs of ellipses, which have no nodes. */
function seamOfSubpath(id: number, { start, pieces, closed }: Subpath): DrawnSeam | null {
  const nodes: SeamNode[] = [{ at: start, before: null, after: null }];
  const last = () => nodes[nodes.length - 1];
  for (const piece of pieces) {
    if (piece.kind === 'arc' || (piece.kind === 'bezier' && piece.control.length !== 4)) return null;
    if (piece.kind === 'straight') nodes.push({ at: piece.to, before: null, after: null });
    else {
      const [from, first, second, to] = piece.control;
      nodes[nodes.length - 1] = { ...last(), after: offset(from, first) };
      nodes.push({ at: to, before: offset(to, second), after: null });
    }
  }
  if (!closed || nodes.length < 2 || !same(last().at, start)) return { id, closed, nodes };
  const { before } = last();
  return { id, closed, nodes: [{ ...nodes[0], before }, ...nodes.slice(1, -1)] };
}

/** The line as a path; every point is where it would be read again, to 0.001 mm. */
function pathData({ nodes, closed }: DrawnSeam): string {
  const said = nodes.map((node) => ({
    at: node.at.map(thousandth) as unknown as Point,
    before: node.before && control(node.at, node.before),
    after: node.after && control(node.at, node.after),
  }));
  const words = [`M ${said[0].at.map(short).join(' ')}`];
  for (let i = 1; i < said.length + (closed ? 1 : 0); i++) {
    const [from, to] = [said[i - 1], said[i % said.length]];
    if (from.after || to.before) {
      words.push(`C ${[from.after ?? from.at, to.before ?? to.at, to.at].flat().map(short).join(' ')}`);
    } else if (i < said.length) words.push(`L ${to.at.map(short).join(' ')}`);
  }
  return words.join(' ') + (closed ? ' Z' : '');
}

const control = (at: Point, off: Point): Point => [thousandth(at[0] + off[0]), thousandth(at[1] + off[1])];

/** The line as pieces, for whatever takes lines of a drawing. */
export function subpathOfSeam({ nodes, closed }: DrawnSeam): Subpath {
  const pieces = Array.from({ length: nodes.length - (closed ? 0 : 1) }, (_, i) => pieceOf(nodes, i));
  return { start: nodes[0].at, pieces, closed };
}

/** The piece of a line after one of its nodes. */
export function pieceOf(nodes: readonly SeamNode[], i: number): Piece {
  const [from, to] = [nodes[i], nodes[(i + 1) % nodes.length]];
  if (!from.after && !to.before) return { kind: 'straight', to: to.at };
  return { kind: 'bezier', control: [from.at, sum(from.at, from.after), sum(to.at, to.before), to.at] };
}

const sum = (p: Point, off: Point | null): Point => (off ? [p[0] + off[0], p[1] + off[1]] : p);
const same = (a: Point, b: Point): boolean => a[0] === b[0] && a[1] === b[1];
/** Null where a control lies on its node. */
const offset = (at: Point, to: Point): Point | null =>
  same(at, to) ? null : [thousandth(to[0] - at[0]), thousandth(to[1] - at[1])];
const thousandth = (mm: number): number => Math.round(1000 * mm) / 1000 + 0;
const short = (mm: number): string => String(thousandth(mm));
