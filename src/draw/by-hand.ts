import type { Mark } from '../fit/fit.js';
import type { Points } from '../geometry/polyline.js';
import { traceLine } from './pen.js';
import { body, mixed, shadowSide, sheen } from './shade.js';
import { element, title } from './svg.js';
import { laidAside, relativeLine } from './svg-pen.js';

/** Pale glass: what is put on by hand has no color in a dressing. */
const GLASS = '#e6ebee';

/** A bead, button or charm as a round thing on the cloth: marked, not sewn. */
export function markPicture({ what, at: [cx, cy], radius }: Mark): string {
  return element(
    'g',
    {},
    title(`${what}, by hand`),
    element('circle', {
      cx: cx + radius * 0.14,
      cy: cy + radius * 0.18,
      r: radius,
      fill: '#1b1410',
      'fill-opacity': 0.3,
    }),
    element('circle', { cx, cy, r: radius, fill: shadowSide(GLASS) }),
    element('circle', {
      cx: cx - radius * 0.06,
      cy: cy - radius * 0.06,
      r: radius * 0.88,
      fill: body(GLASS),
    }),
    element('circle', {
      cx: cx - radius * 0.3,
      cy: cy - radius * 0.34,
      r: radius * 0.3,
      fill: '#ffffff',
      'fill-opacity': 0.85,
    }),
    element('circle', { cx, cy, r: Math.max(0.2, radius * 0.2), fill: mixed(GLASS, '#120c08', 0.7) }),
  );
}

/** Ribbon, braid or lace along its placement line, with its shadow and two woven edges. */
export function ribbonPicture(points: Points, hex: string, width: number, name: string): string {
  const line = relativeLine((pen) => traceLine(pen, points));
  const stroke = (color: string, wide: number, rest: Record<string, number> = {}) => ({
    stroke: color,
    'stroke-width': wide,
    ...rest,
  });
  return element(
    'g',
    { fill: 'none', 'stroke-linejoin': 'round', 'stroke-linecap': 'butt' },
    title(`${name}, by hand`),
    element('path', {
      ...stroke('#1b1410', width + 0.3, { 'stroke-opacity': 0.25 }),
      d: laidAside(line, 0.18),
    }),
    element('path', { ...stroke(shadowSide(hex), width), d: laidAside(line, 0) }),
    element('path', { ...stroke(body(hex), width - 0.35), d: laidAside(line, 0) }),
    element('path', { ...stroke(mixed(body(hex), '#120c08', 0.18), width * 0.72), d: laidAside(line, 0) }),
    element('path', { ...stroke(body(hex), width * 0.62), d: laidAside(line, 0) }),
    element('path', {
      ...stroke(sheen(hex), width * 0.2, { 'stroke-opacity': 0.25 }),
      d: laidAside(line, -width * 0.1),
    }),
  );
}
