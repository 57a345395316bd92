import type { Block } from '../block/block.js';
import { stopsOf } from '../formats/stops.js';
import { shifted, traceLine } from './pen.js';
import { element, title } from './svg.js';
import { svgPen } from './svg-pen.js';

/** What the block's stitch file already sews, as a faint trace, so that the new thread stands out; '' for a drawing. */
export function existingPicture({ existing, origin }: Block): string {
  if (!existing) return '';
  const path = svgPen();
  const pen = shifted(path, -origin[0], -origin[1]);
  for (const stop of stopsOf(existing)) for (const run of stop.runs) traceLine(pen, run);
  return element(
    'g',
    {
      fill: 'none',
      stroke: '#6d665e',
      'stroke-width': 0.25,
      'stroke-opacity': 0.35,
      'stroke-linejoin': 'round',
    },
    title('sewn before or after the dressing'),
    element('path', { d: path.data() }),
  );
}
