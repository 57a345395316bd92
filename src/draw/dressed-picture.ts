import type { Block } from '../block/block.js';
import type { Design } from '../design/design.js';
import type { Dressed } from '../dress.js';
import { threadWidth } from '../needle/craft.js';
import { clothPicture, foldPicture } from './cloth.js';
import { existingPicture } from './existing.js';
import { element, type Frame, svgDocument, title } from './svg.js';
import { threadGroup, threadPicture } from './thread.js';

/**
 * The dressed block as an SVG picture at actual size: patches in their fabrics, seams as folds, what was sewn already
 * as a faint trace, then one group a color stop in the order sewn.
 */
export function drawDressed(dressed: Dressed): string {
  const { block, design } = dressed;
  return svgDocument(
    pictureFrame(block, design),
    block.name,
    clothPicture(block.map),
    foldPicture(block.map),
    existingPicture(block),
    ...stopPictures(design),
  );
}

/** One group a color stop, titled. */
function stopPictures(design: Design): string[] {
  return design.stops.map((stop) =>
    element(
      'g',
      threadGroup,
      title(stop.title),
      threadPicture(stop.runs, stop.thread.hex, threadWidth(stop.thread.weight)),
    ),
  );
}

/** The block's own frame, widened by whole millimeters where thread reaches past it. */
function pictureFrame({ map }: Block, design: Design): Frame {
  let [left, top, right, bottom] = [0, 0, map.width, map.height];
  for (const stop of design.stops) {
    const { xy } = stop.runs;
    for (let i = 0; i < xy.length; i += 2) {
      if (xy[i] < left) left = xy[i];
      if (xy[i] > right) right = xy[i];
      if (xy[i + 1] < top) top = xy[i + 1];
      if (xy[i + 1] > bottom) bottom = xy[i + 1];
    }
  }
  const wide = (edge: number, own: number) =>
    edge === own ? own : Math.sign(edge - own) * Math.ceil(Math.abs(edge - own) + 0.5) + own;
  return {
    left: wide(left, 0),
    top: wide(top, 0),
    right: wide(right, map.width),
    bottom: wide(bottom, map.height),
  };
}
