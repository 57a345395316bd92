import type { Patch, Seam, SeamMap } from '../block/seam-map.js';
import type { KeptArea } from '../formats/line-drawing.js';
import type { Point } from '../geometry/point.js';
import { drawNumber } from './digits.js';
import { keptAreaPicture } from './keep-clear.js';
import { clearSpot, roomiest } from './label-spots.js';
import { traceLine, traceRing } from './pen.js';
import { mixed, mutedCloth } from './shade.js';
import { element, svgDocument, title } from './svg.js';
import { pathData } from './svg-pen.js';

const INK = '#22313f';
const SEAM = '#a3282f';
const MARGIN = 6;

/**
 * The seam map as a numbered picture at actual size: patches pale in their fabrics with gray numbers, every seam with
 * its number and an arrow in the direction in which it runs, junctions as dots. At a junction the seam that runs
 * through is drawn over it; where a seam butts in its line stops short of the dot.
 */
export function drawSeamMap(map: SeamMap, name: string, keepClear: readonly KeptArea[] = []): string {
  const size = Math.max(2.2, Math.min(map.width, map.height) / 45);
  return svgDocument(
    { left: -MARGIN, top: -MARGIN, right: map.width + MARGIN, bottom: map.height + MARGIN },
    name,
    element('rect', {
      x: -MARGIN,
      y: -MARGIN,
      width: map.width + 2 * MARGIN,
      height: map.height + 2 * MARGIN,
      fill: '#fff',
    }),
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
    element('g', lines(INK, size * 0.14), ...map.seams.map((seam) => seamNumber(seam, map, size))),
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

/** An open arrowhead behind the number. */
function arrow(seam: Seam, map: SeamMap, size: number): string {
  const { at, direction } = clearSpot(seam, map, size, [0.72, 0.78, 0.66, 0.84]);
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

/** Where the number of a seam stands. */
export const seamNumberSpot = (seam: Seam, map: SeamMap, size: number): Point =>
  clearSpot(seam, map, size, [0.5, 0.42, 0.58, 0.34, 0.26, 0.2]).at;

/** The seam's number on a small white plate near the middle of the seam. */
export function seamNumber(seam: Seam, map: SeamMap, size: number): string {
  const at = seamNumberSpot(seam, map, size);
  const wide = size * (0.85 + 0.46 * String(seam.id).length);
  return (
    element('rect', {
      x: at[0] - wide / 2,
      y: at[1] - size * 0.8,
      width: wide,
      height: size * 1.6,
      rx: size * 0.4,
      fill: '#fff',
      'stroke-width': size * 0.08,
    }) + element('path', { d: pathData((pen) => drawNumber(pen, seam.id, at[0], at[1], size * 0.9)) })
  );
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
