import type { Block } from '../block/block.js';
import { type Design, type Stop, stopsInOrder } from '../design/design.js';
import { type Dressed, marksOf } from '../dress.js';
import { stopsOf } from '../formats/stops.js';
import type { Points } from '../geometry/polyline.js';
import { threadWidth } from '../needle/craft.js';
import type { Runs } from '../needle/run.js';
import { markPicture, ribbonPicture } from './by-hand.js';
import { clothPicture, foldPicture } from './cloth.js';
import { existingPicture } from './existing.js';
import { keptAreaPicture } from './keep-clear.js';
import { element, type Frame, svgDocument, title } from './svg.js';
import { threadGroup, threadPicture } from './thread.js';

/**
 * The dressed block as an SVG picture at actual size: patches in their fabrics, seams as folds, what was sewn already
 * as a faint trace, then one group a color stop in the order sewn.
 */
export function drawDressed(dressed: Dressed): string {
  const { block, design } = dressed;
  return svgDocument(pictureFrame(block, design), block.name, ...dressedLayers(dressed));
}

/**
 * What lies on each other in the picture of a dressed block, from the cloth up.
 * @param sewn color stops of the file, from 1, that are sewn; all when not given. What is put on by hand comes after all
 */
export function dressedLayers(dressed: Dressed, sewn?: ReadonlySet<number>): string[] {
  const { block, design } = dressed;
  const stops = stopsInOrder(design);
  const isSewn = (stop: Stop) => !sewn || sewn.has(stops.indexOf(stop) + 1);
  const marks = stops.every((_, i) => !sewn || sewn.has(i + 1)) ? marksOf(dressed) : [];
  return [
    clothPicture(block.map, pictureFrame(block, design)),
    foldPicture(block.map),
    existingPicture(block, sewn && existingSewn(design, sewn)),
    ...stopPictures(dressed, isSewn),
    ...marks.map(markPicture),
    ...dressed.keepClear.map(keptAreaPicture),
  ];
}

/** Which stops of the block's own file, from 1 as that counts them, are among some of the whole. */
function existingSewn(design: Design, sewn: ReadonlySet<number>): ReadonlySet<number> | undefined {
  const came = stopsInOrder(design).flatMap((stop, i) => (stop ? [] : [i + 1]));
  // where the file's own are left out, they lie in the hoop already
  return came.length ? new Set(came.flatMap((stop, i) => (sewn.has(stop) ? [i + 1] : []))) : undefined;
}

/** Runs without their ties: a tie goes forward and back before the run goes along its line once. */
export const runsBetweenTies = ({ xy, start }: Pick<Runs, 'xy' | 'start'>): Points[] =>
  Array.from({ length: start.length - 1 }, (_, r) => xy.subarray(2 * start[r] + 4, 2 * start[r + 1] - 4));

/** One group a color stop, titled; what is laid by hand lies on its placement line and under all other thread. */
function stopPictures({ design, lines, dressing }: Dressed, isSewn: (stop: Stop) => boolean): string[] {
  const placed = new Map(
    lines.flatMap(({ layers, treatment }) =>
      layers.filter(({ kind }) => kind === 'placement').map(({ runs }) => [runs, treatment] as const),
    ),
  );
  const picture = (stop: Stop) =>
    element(
      'g',
      threadGroup,
      title(stop.title),
      threadPicture(stop.runs, stop.thread.hex, threadWidth(stop.thread.weight)),
    );
  const stops = design.stops.filter(isSewn);
  // a placement line that was merged with other thread is no stop that could be left out
  const unsewn = new Set(design.stops.filter((stop) => !isSewn(stop)).map(({ runs }) => runs));
  const laid = [...placed].filter(([runs]) => !unsewn.has(runs));
  const ribbons = laid.flatMap(([{ xy, start }, treatment]) => {
    const { hex, width, name } = dressing.treatments[treatment].laid!;
    return runsBetweenTies({ xy, start }).map((line) => ribbonPicture(line, hex, width, name));
  });
  return [
    ...stops.filter(({ runs }) => placed.has(runs)).map(picture),
    ...ribbons,
    ...stops.filter(({ runs }) => !placed.has(runs)).map(picture),
  ];
}

/** The block's own frame, widened by whole millimeters where thread reaches past it. */
export function pictureFrame({ map, existing, origin }: Block, design: Design): Frame {
  let [left, top, right, bottom] = [0, 0, map.width, map.height];
  const hold = (xy: Points, dx: number, dy: number) => {
    for (let i = 0; i < xy.length; i += 2) {
      const x = xy[i] + dx;
      const y = xy[i + 1] + dy;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  };
  for (const stop of design.stops) hold(stop.runs.xy, 0, 0);
  for (const stop of existing ? stopsOf(existing) : []) {
    for (const run of stop.runs) hold(run, -origin[0], -origin[1]);
  }
  // Half a millimeter is room for the thread's own width.
  const down = (edge: number, own: number) => (edge < own ? own - Math.ceil(own - edge + 0.5) : own);
  const up = (edge: number, own: number) => (edge > own ? own + Math.ceil(edge - own + 0.5) : own);
  return {
    left: down(left, 0),
    top: down(top, 0),
    right: up(right, map.width),
    bottom: up(bottom, map.height),
  };
}
