import type { KeptArea } from '../formats/line-drawing.js';
import { traceRing } from './pen.js';
import { element, title } from './svg.js';
import { pathData } from './svg-pen.js';

/** An area that is kept clear: a light dashed line over a thin dark one, to be seen on any fabric and pass for no thread. */
export function keptAreaPicture({ name, area }: KeptArea): string {
  const d = pathData((pen) => {
    for (const ring of area.rings) traceRing(pen, ring);
  });
  return element(
    'g',
    { fill: 'none', 'stroke-linejoin': 'round', 'stroke-dasharray': '1.6 1.2' },
    title(`${name}, kept clear`),
    element('path', { stroke: '#2b2622', 'stroke-width': 0.35, 'stroke-opacity': 0.35, d }),
    element('path', { stroke: '#ffffff', 'stroke-width': 0.2, 'stroke-opacity': 0.75, d }),
  );
}
