import type { Block } from '../block/block.js';
import { stopsOf } from '../formats/stops.js';
import { shifted, traceLine } from './pen.js';
import { element, title } from './svg.js';
import { svgPen } from './svg-pen.js';

/**
 * What the block's stitch file already sews, as a faint trace, so that the new thread stands out: a titled group for each
 * color stop that has stitches; '' for a drawing.
 * @param sewn stops of the file, from 1, that are sewn; all when not given
 */
export function existingPicture({ existing, origin }: Block, sewn?: ReadonlySet<number>): string {
  if (!existing) return '';
  const groups = stopsOf(existing).flatMap(({ stop, runs }) => {
    if (runs.length === 0 || (sewn && !sewn.has(stop))) return [];
    const path = svgPen();
    const pen = shifted(path, -origin[0], -origin[1]);
    for (const run of runs) traceLine(pen, run);
    return [element('g', {}, title(`stop ${stop} of the block`), element('path', { d: path.data() }))];
  });
  return element(
    'g',
    // of the whole, so that stops that lie on each other look no darker than one
    { opacity: 0.35, fill: 'none', stroke: '#6d665e', 'stroke-width': 0.25, 'stroke-linejoin': 'round' },
    ...groups,
  );
}
