import type { Patch, Seam, SeamMap } from '../block/seam-map.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { type Box, boxAt } from '../geometry/box.js';
import type { Point } from '../geometry/point.js';
import { drawNumber } from './digits.js';
import { keptAreaPicture } from './keep-clear.js';
import { clearSpot, junctionsOn, roomiest } from './label-spots.js';
import { numberPlate, numberPlateSize, plateLeads } from './number-plates.js';
import { traceLine, traceRing } from './pen.js';
import { type Room, roomForAll } from './plate-room.js';
import { junctionBoxes, seamBoxes, seamPlates } from './seam-plates.js';
import { mixed, mutedCloth } from './shade.js';
import { element, svgDocument, title } from './svg.js';
import { pathData } from './svg-pen.js';

const INK = '#22313f';
const SEAM = '#a3282f';
/** Of white paper about the block, mm. */
const MARGIN = 6;
/** Clear paper between two plates, in heights of their figures. */
const CLEAR = 0.12;

/**
 * The seam map as a numbered picture at actual size: patches pale in their fabrics with gray numbers, every seam with
 * its number and an arrow in the direction in which it runs, junctions as dots. At a junction the seam that runs
 * through is drawn over it; where a seam butts in its line stops short of the dot.
 */
export function drawSeamMap(map: SeamMap, name: string, keepClear: readonly KeptArea[] = []): string {
  const size = Math.max(2.2, Math.min(map.width, map.height) / 45);
  const plates = seamPlates(map, (id) => numberPlateSize(id, size));
  const room: Room = {
    clear: CLEAR * size,
    within: { left: -MARGIN, top: -MARGIN, right: map.width + MARGIN, bottom: map.height + MARGIN },
    taken: [...junctionBoxes(map, size * 0.4), ...map.patches.map((patch) => patchBox(patch, size))],
    avoided: seamBoxes(map, size),
  };
  const { spots, frame } = roomForAll(plates, room, MARGIN);
  const { left: x, top: y } = frame;
  return svgDocument(
    frame,
    name,
    element('rect', { x, y, width: frame.right - x, height: frame.bottom - y, fill: '#fff' }),
    element('g', { stroke: 'none' }, ...map.patches.map((patch) => patchFace(patch, 0.6))),
    element('g', lines('#8d99a3', size * 0.1), ...map.patches.map((patch) => patchNumber(patch, size))),
    outline(map),
    ...keepClear.map(keptAreaPicture),
    element('g', lines(SEAM, size * 0.22), ...map.seams.map(seamLine)),
    element('g', lines(SEAM, size * 0.22), ...map.seams.map((seam) => arrow(seam, map, size))),
    element(
      'g',
      { fill: '#fff', stroke: INK, 'stroke-width': size * 0.12 },
      ...map.junctions.map((j) => dot(j.at, size)),
    ),
    element('g', lines(SEAM, size * 0.22), through(map, size)),
    plateLeads(spots, size),
    ...map.seams.map(({ id }, i) => (spots[i] ? numberPlate(id, spots[i].at, size) : '')),
  );
}

export const lines = (stroke: string, width: number) => ({
  fill: 'none',
  stroke,
  'stroke-width': width,
  'stroke-linecap': 'round',
  'stroke-linejoin': 'round',
});

/** @param pale how far from its fabric toward white it is drawn, 0 to 1 */
export const patchFace = (patch: Patch, pale: number): string =>
  element(
    'path',
    {
      fill: mixed(patch.fabric ?? mutedCloth(patch.id), '#ffffff', pale),
      'fill-rule': 'evenodd',
      d: pathData((pen) => {
        for (const ring of [patch.boundary, ...patch.holes]) traceRing(pen, ring);
      }),
    },
    title(`patch ${patch.id}, ${Math.round(patch.area)} mm²`),
  );

const patchNumber = (patch: Patch, size: number): string => {
  const [x, y] = roomiest(patch.boundary);
  return element('path', { d: pathData((pen) => drawNumber(pen, patch.id, x, y, size)) });
};

/** What the number of a patch takes. */
const patchBox = ({ id, boundary }: Patch, size: number): Box =>
  boxAt(roomiest(boundary), size * 0.6 * String(id).length, size * 0.9);

const outline = (map: SeamMap): string =>
  map.outline
    ? element(
        'path',
        { ...lines(INK, 0.5), d: pathData((pen) => traceRing(pen, map.outline!.points)) },
        title('outline'),
      )
    : '';

const seamLine = (seam: Seam): string =>
  element('path', { d: pathData((pen) => traceLine(pen, seam.points)) }, title(`seam ${seam.id}`));

const dot = (at: Point, size: number): string => element('circle', { cx: at[0], cy: at[1], r: size * 0.4 });

/** Shares of a seam's length at which its arrow may stand, the best first. */
const ARROW = [0.72, 0.78, 0.66, 0.84];

/** An open arrowhead behind the number. */
function arrow(seam: Seam, map: SeamMap, size: number): string {
  const { at, direction } = clearSpot(seam.points, junctionsOn(seam, map), size, ARROW);
  const barb = (turn: number): Point => [
    at[0] + size * 0.7 * Math.cos(direction + turn),
    at[1] + size * 0.7 * Math.sin(direction + turn),
  ];
  return element('path', {
    d: pathData((pen) => {
      pen.move(...barb(2.6));
      pen.line(...at);
      pen.line(...barb(-2.6));
    }),
  });
}

/** A stretch of each through seam over the dot of its junction. */
function through(map: SeamMap, size: number): string {
  const byId = new Map(map.seams.map((seam) => [seam.id, seam]));
  const d = pathData((pen) => {
    for (const junction of map.junctions) {
      const seam = junction.through === null ? undefined : byId.get(junction.through);
      if (!seam) continue;
      for (const arm of junction.arms) {
        if (arm.seam !== seam.id) continue;
        pen.move(...junction.at);
        pen.line(
          junction.at[0] + size * 0.4 * Math.cos(arm.direction),
          junction.at[1] + size * 0.4 * Math.sin(arm.direction),
        );
      }
    }
  });
  return d ? element('path', { d }) : '';
}
