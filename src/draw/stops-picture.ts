import type { Block } from '../block/block.js';
import type { Role, StopRole } from '../block/roles/role.js';
import { stopsOf } from '../formats/stops.js';
import { numberPlate, numberPlateSize, plateLeads } from './number-plates.js';
import { shifted, traceLine } from './pen.js';
import { placesOnLines, plateIn, roomForAll } from './plate-room.js';
import { type Attributes, element, svgDocument, title } from './svg.js';
import { pathData } from './svg-pen.js';

/** How each role looks: by dashes and width as well as by color. `told` is for the table beside the picture. */
export const ROLE_LOOKS: Readonly<Record<Role, { readonly look: Attributes; readonly told: string }>> = {
  map: { look: { stroke: '#8d99a3', 'stroke-width': 0.5 }, told: 'thin gray' },
  placement: {
    look: { stroke: '#2f5d8a', 'stroke-width': 0.6, 'stroke-dasharray': '3 1.5' },
    told: 'blue dashes',
  },
  seam: { look: { stroke: '#a3282f', 'stroke-width': 0.9 }, told: 'bold red' },
  'tack-down': {
    look: { stroke: '#4d7a3a', 'stroke-width': 0.6, 'stroke-dasharray': '0.4 1.4' },
    told: 'green dots',
  },
  edge: { look: { stroke: '#d9a441', 'stroke-width': 0.3 }, told: 'amber zigzag' },
  allowance: {
    look: { stroke: '#7a6a8f', 'stroke-width': 0.5, 'stroke-dasharray': '6 2' },
    told: 'long violet dashes',
  },
  fill: { look: { stroke: '#7fa7a0', 'stroke-width': 0.25 }, told: 'thin green' },
  other: { look: { stroke: '#22313f', 'stroke-width': 0.3 }, told: 'thin black' },
};

/** Of white paper about the block, mm. */
const MARGIN = 8;
/** Clear paper between two plates, in heights of their figures. */
const CLEAR = 0.2;

/** Every color stop of a block's stitch file at actual size, each with its number, in the look of its role. */
export function drawStops({ existing, origin, map, name }: Block, roles: readonly StopRole[]): string {
  const stops = existing ? stopsOf(existing) : [];
  const size = Math.max(2.2, Math.min(map.width, map.height) / 50);
  const trace = stops.map(({ runs }) =>
    pathData((pen) => {
      for (const run of runs) traceLine(shifted(pen, -origin[0], -origin[1]), run);
    }),
  );
  const numbered = stops.filter(({ stitches }) => stitches > 0);
  const plates = numbered.map(({ stop, runs }) =>
    plateIn({ ...numberPlateSize(stop, size), places: placesOnLines(runs) }, ([x, y]) => [
      x - origin[0],
      y - origin[1],
    ]),
  );
  const within = { left: -MARGIN, top: -MARGIN, right: map.width + MARGIN, bottom: map.height + MARGIN };
  const { spots, frame } = roomForAll(plates, { clear: CLEAR * size, within }, MARGIN);
  const { left: x, top: y } = frame;
  return svgDocument(
    frame,
    name,
    element('rect', { x, y, width: frame.right - x, height: frame.bottom - y, fill: '#fff' }),
    ...stops.map(({ stop }, i) =>
      element(
        'g',
        {
          fill: 'none',
          'stroke-linecap': 'round',
          'stroke-linejoin': 'round',
          ...ROLE_LOOKS[roles[i].role].look,
        },
        title(`stop ${stop}, ${roles[i].role}`),
        element('path', { d: trace[i] }),
      ),
    ),
    plateLeads(spots, size),
    ...numbered.map(({ stop }, i) => (spots[i] ? numberPlate(stop, spots[i].at, size) : '')),
  );
}
