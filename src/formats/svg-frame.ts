import { type Matrix, scale, transform, translate } from 'transformation-matrix';
import type { Finding } from '../finding.js';
import { PX_PER_MM } from '../geometry/units.js';
import { InputError } from '../input-error.js';
import { isPercentage, readLength } from './svg-length.js';
import { FARTHEST } from './svg-place.js';
import type { SvgElement } from './svg-tree.js';

export interface Viewport {
  readonly width: number;
  readonly height: number;
}

/** How a drawing lies on the cloth. */
export interface Frame {
  readonly toMm: Matrix;
  /** what percentages are of, in user units */
  readonly user: Viewport;
  /** mm, or null when the drawing does not say */
  readonly size: Viewport | null;
  /** why the size is not the drawing's own word, or null when it is */
  readonly guessed: string | null;
}

/**
 * The frame of a drawing: how its user units become mm, and its size where it says one. Without a fixed width and
 * height the viewBox gives them at 96 pixels to the inch.
 *
 * @throws InputError when sizes are no lengths, not above 0, or beyond 10 m
 */
export function frameOf(root: SvgElement, where: string): Frame {
  const box = readViewBox(root, where);
  let width = fixedLength(root, 'width', where);
  let height = fixedLength(root, 'height', where);
  const guessed = width === null && height === null ? sizeless(root) : null;
  if (box) {
    width ??= height === null ? box[2] : (height * box[2]) / box[3];
    height ??= (width * box[3]) / box[2];
  }
  if (width === null || height === null) {
    const user = { width: width ?? 0, height: height ?? 0 };
    return { toMm: scale(1 / PX_PER_MM), user, size: null, guessed };
  }
  const size = { width: inMm(width), height: inMm(height) };
  if (!(Math.max(size.width, size.height) <= FARTHEST)) {
    throw new InputError(
      'frame-too-large',
      `${where} line ${root.line}`,
      `the drawing is ${size.width} x ${size.height} mm`,
      'a block of up to 10 m can be read',
    );
  }
  if (!box) return { toMm: scale(1 / PX_PER_MM), user: { width, height }, size, guessed };
  const toMm = fitViewBox(box, size, root.attributes.preserveAspectRatio);
  return { toMm, user: { width: box[2], height: box[3] }, size, guessed };
}

function sizeless({ attributes: { width, height } }: SvgElement): string {
  const said = width ?? height;
  return said === undefined ? 'says no width and height' : `is ${said} of the page it stands on`;
}

/** Pixels in mm, free of the rounding that units leave behind: 130mm is 130. */
const inMm = (px: number): number => Math.round((px / PX_PER_MM) * 1e9) / 1e9;

/** Says what size was taken for a drawing that gives none of its own. */
export function sizeFinding({ size, guessed }: Frame, taken: Viewport, where: string): Finding[] {
  if (guessed === null) return [];
  const from = size ? 'its viewBox' : 'its coordinates';
  const mm = `${taken.width.toFixed(1)} x ${taken.height.toFixed(1)} mm`;
  const message =
    `${where} ${guessed}; ${mm} was taken from ${from}, at 96 pixels to the inch. ` +
    'If that is not its size, give it a width and height in mm';
  return [{ level: 'note', code: 'size-taken', message }];
}

/** The numbers of a viewBox attribute: x, y, width, height; null when there is none. */
export function readViewBox(element: SvgElement, where: string): [number, number, number, number] | null {
  const text = element.attributes.viewBox;
  if (text === undefined) return null;
  const numbers = text
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [, , width, height] = numbers;
  const place = `${where} line ${element.line}`;
  if (numbers.length !== 4 || !numbers.every(Number.isFinite)) {
    const right = 'give four numbers: x y width height';
    throw new InputError('bad-view-box', place, `viewBox is "${text}"`, right);
  }
  if (width <= 0 || height <= 0) {
    const right = 'its third and fourth number, width and height, must be above 0';
    throw new InputError('bad-view-box', place, `viewBox "${text}" shows nothing`, right);
  }
  return numbers as [number, number, number, number];
}

/** A width or height attribute in pixels; null when missing, a percentage, or in a unit without a fixed size. */
export function fixedLength(element: SvgElement, name: 'width' | 'height', where: string): number | null {
  const text = element.attributes[name];
  if (text === undefined || text === 'auto' || isPercentage(text)) return null;
  const value = readLength(text, 0);
  if (value === null || value <= 0) {
    const place = `${where} line ${element.line}`;
    throw new InputError('bad-length', place, `${name} is "${text}"`, 'give a length such as 130mm');
  }
  return value;
}

/**
 * How a viewBox is laid into its viewport (Scalable Vector Graphics 2, section 8.6: preserveAspectRatio; the default
 * xMidYMid meet keeps shapes true and centers them).
 */
export function fitViewBox(
  [x, y, width, height]: readonly [number, number, number, number],
  viewport: Viewport,
  preserve = 'xMidYMid meet',
): Matrix {
  const [align = 'xMidYMid', manner = 'meet'] = preserve
    .trim()
    .replace(/^defer\s+/, '')
    .split(/\s+/);
  let [sx, sy] = [viewport.width / width, viewport.height / height];
  if (align !== 'none') {
    sx = manner === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
    sy = sx;
  }
  const share = (axis: string) => (align.includes(`${axis}Min`) ? 0 : align.includes(`${axis}Max`) ? 1 : 0.5);
  const dx = align === 'none' ? 0 : share('x') * (viewport.width - sx * width);
  const dy = align === 'none' ? 0 : share('Y') * (viewport.height - sy * height);
  return transform(translate(dx, dy), scale(sx, sy), translate(-x, -y));
}
