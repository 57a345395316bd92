import type { EllipseArc } from '../geometry/ellipse.js';
import type { Point } from '../geometry/point.js';
import { InputError } from '../input-error.js';
import type { Viewport } from './svg-frame.js';
import { readLength } from './svg-length.js';
import { readPathData } from './svg-path.js';
import type { SvgElement } from './svg-tree.js';

/** A connected line of a shape in its own coordinates: where it starts, and piece by piece where it goes. */
export interface Subpath {
  readonly start: Point;
  readonly pieces: readonly Piece[];
  readonly closed: boolean;
}

export type Piece =
  | { readonly kind: 'straight'; readonly to: Point }
  /** control points from the piece's start to its end, both included */
  | { readonly kind: 'bezier'; readonly control: readonly Point[] }
  | { readonly kind: 'arc'; readonly arc: EllipseArc; readonly to: Point };

export const SHAPES = ['path', 'line', 'polyline', 'polygon', 'rect', 'circle', 'ellipse'] as const;
export type ShapeName = (typeof SHAPES)[number];
export const isShape = (name: string): name is ShapeName => (SHAPES as readonly string[]).includes(name);

/**
 * The lines of a basic shape (Scalable Vector Graphics 2, chapter 10). A shape without size has none.
 *
 * @throws InputError with the line number when numbers are missing or are none
 */
export function readShape(element: SvgElement, viewport: Viewport, where: string): Subpath[] {
  const { attributes } = element;
  const place = `${where} line ${element.line} (${element.name})`;
  const length = (name: string, missing: number, whole: number): number => {
    const text = attributes[name];
    if (text === undefined || text === 'auto') return missing;
    const value = readLength(text, whole);
    if (value === null)
      throw new InputError('bad-number', place, `${name} is "${text}"`, 'give a number or a length');
    return value;
  };
  const { width, height } = viewport;
  const across = (name: string, missing = 0) => length(name, missing, width);
  const down = (name: string, missing = 0) => length(name, missing, height);
  const radius = (name: string, missing: number) =>
    length(name, missing, Math.hypot(width, height) / Math.SQRT2);

  switch (element.name as ShapeName) {
    case 'path':
      return readPathData(attributes.d ?? '', place);
    case 'line':
      return [open([across('x1'), down('y1')], [[across('x2'), down('y2')]])];
    case 'polyline':
    case 'polygon': {
      const points = readPoints(attributes.points ?? '', place);
      if (points.length < 2) return [];
      return [{ ...open(points[0], points.slice(1)), closed: element.name === 'polygon' }];
    }
    case 'rect':
      return roundedRect(
        [across('x'), down('y')],
        [across('width'), down('height')],
        [across('rx', Number.NaN), down('ry', Number.NaN)],
      );
    case 'circle': {
      const r = radius('r', 0);
      return ellipse([across('cx'), down('cy')], r, r);
    }
    case 'ellipse': {
      const rx = across('rx', Number.NaN);
      const ry = down('ry', Number.NaN);
      return ellipse([across('cx'), down('cy')], Number.isNaN(rx) ? ry : rx, Number.isNaN(ry) ? rx : ry);
    }
  }
}

const open = (start: Point, rest: readonly Point[]): Subpath => ({
  start,
  pieces: rest.map((to) => ({ kind: 'straight', to })),
  closed: false,
});

function readPoints(text: string, place: string): Point[] {
  const words = text
    .trim()
    .split(/\s*,\s*|\s+|(?<=\d)(?=[+-])/)
    .filter((word) => word !== '');
  const numbers = words.map(Number);
  const bad = numbers.findIndex((value) => !Number.isFinite(value));
  if (bad >= 0)
    throw new InputError('bad-number', place, `points hold "${words[bad]}"`, 'give pairs of numbers');
  if (numbers.length % 2) {
    throw new InputError(
      'bad-number',
      place,
      `points hold ${numbers.length} numbers`,
      'give x and y of every point',
    );
  }
  return Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i], numbers[2 * i + 1]]);
}

function ellipse(center: Point, rx: number, ry: number): Subpath[] {
  if (!(rx > 0 && ry > 0)) return [];
  const start: Point = [center[0] + rx, center[1]];
  const arc: EllipseArc = { center, a: [rx, 0], b: [0, ry], from: 0, to: 2 * Math.PI };
  return [{ start, pieces: [{ kind: 'arc', arc, to: start }], closed: true }];
}

function roundedRect([x, y]: Point, [width, height]: Point, radii: Point): Subpath[] {
  if (!(width > 0 && height > 0)) return [];
  const [rx0, ry0] = [
    Number.isNaN(radii[0]) ? radii[1] : radii[0],
    Number.isNaN(radii[1]) ? radii[0] : radii[1],
  ];
  const rx = Math.min(rx0 || 0, width / 2);
  const ry = Math.min(ry0 || 0, height / 2);
  const [right, bottom] = [x + width, y + height];
  if (!(rx > 0 && ry > 0)) {
    return [
      {
        ...open(
          [x, y],
          [
            [right, y],
            [right, bottom],
            [x, bottom],
          ],
        ),
        closed: true,
      },
    ];
  }
  const quarter = (center: Point, turn: number, to: Point): Piece => {
    const from = (turn * Math.PI) / 2;
    return { kind: 'arc', arc: { center, a: [rx, 0], b: [0, ry], from, to: from + Math.PI / 2 }, to };
  };
  const straight = (to: Point): Piece => ({ kind: 'straight', to });
  const pieces = [
    straight([right - rx, y]),
    quarter([right - rx, y + ry], -1, [right, y + ry]),
    straight([right, bottom - ry]),
    quarter([right - rx, bottom - ry], 0, [right - rx, bottom]),
    straight([x + rx, bottom]),
    quarter([x + rx, bottom - ry], 1, [x, bottom - ry]),
    straight([x, y + ry]),
    quarter([x + rx, y + ry], 2, [x + rx, y]),
  ];
  return [{ start: [x + rx, y], pieces, closed: true }];
}
