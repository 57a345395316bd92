import { type Matrix, scale, transform, translate } from 'transformation-matrix';
import { InputError } from '../input-error.js';
import { isPercentage, readLength } from './svg-length.js';
import type { SvgElement } from './svg-tree.js';

export interface Viewport {
  readonly width: number;
  readonly height: number;
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
  if (numbers.length !== 4 || !numbers.every(Number.isFinite) || width <= 0 || height <= 0) {
    const place = `${where} line ${element.line}`;
    throw new InputError(
      'bad-view-box',
      place,
      `viewBox is "${text}"`,
      'give four numbers: x y width height',
    );
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
