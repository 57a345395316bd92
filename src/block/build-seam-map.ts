import type { Finding } from '../finding.js';
import { findCorners } from '../geometry/corners.js';
import { SAME_POINT, SNAP } from '../geometry/tolerances.js';
import { chainsOf, meetingsOf } from './chains.js';
import { withoutDoubled } from './doubled.js';
import type { LineDrawing } from './drawn-line.js';
import { cyclePoints } from './faces.js';
import { junctionsOf } from './junctions.js';
import { mapFindings } from './map-findings.js';
import { networkOf } from './network.js';
import { outlineOf } from './outline.js';
import { patchesOf } from './patches.js';
import { cutIntoPieces } from './pieces.js';
import { regionsOf } from './regions.js';
import type { Outline, SeamMap } from './seam-map.js';
import { fromTop, inOrder } from './seam-order.js';
import { seamOf } from './seams.js';
import { snapEnds } from './snap-ends.js';
import { asWished, type JunctionWishes } from './wishes.js';

export interface SeamMapOptions extends JunctionWishes {
  /** ends nearer than this meet, mm; default SNAP */
  readonly snap?: number;
}

export interface BuiltMap {
  readonly map: SeamMap;
  readonly findings: readonly Finding[];
}

/**
 * The seam map of a block's lines: ends joined, doubled lines made one, lines cut where they meet and followed straight
 * through; patches, outline, numbers. The order and direction of drawing change nothing. Every line given is in a seam,
 * in the outline, or named in a finding.
 *
 * Lengths in mm. Near n log n in the number of segments.
 */
export function buildSeamMap(drawing: LineDrawing, options: SeamMapOptions = {}): BuiltMap {
  const snap = Math.max(options.snap ?? SNAP, 10 * SAME_POINT);
  const { pieces, tooShort } = cutIntoPieces(drawing.lines, snap);
  const single = withoutDoubled(pieces, snap);
  const network = networkOf(snapEnds(single.pieces, snap), snap);
  const regions = regionsOf(network, drawing.lines);
  const { outline, others } = outlineOf(network, regions);

  const isOutline = network.edges.map(() => false);
  for (const h of outline ?? []) isOutline[h >> 1] = true;
  const plain = meetingsOf(network, isOutline);
  const found = inOrder(network, chainsOf(network, plain, isOutline));
  const { meetings, through, lost } = asWished(network, plain, found, options);
  const isOtherwise = options.join?.length || options.split?.length;
  const chains = isOtherwise ? inOrder(network, chainsOf(network, meetings, isOutline)) : found;
  const patches = patchesOf(regions);
  const edging = outline && placedOutline(cyclePoints(network, outline));

  const { junctions, numberAt } = junctionsOf({
    network,
    meetings,
    chains,
    outline: outline && edging ? { halfEdges: outline, start: edging.start } : null,
    through,
    sewn: drawing.lines.map(({ sewn }) => sewn),
  });
  const seams = chains.map((chain, i) =>
    seamOf(i + 1, chain, network, meetings, numberAt, regions, patches.idOfFace),
  );
  const map: SeamMap = {
    width: drawing.width,
    height: drawing.height,
    outline: edging ? edging.outline : null,
    seams,
    junctions,
    patches: patches.list,
  };
  const present = new Set([...network.edges.map(({ line }) => line), ...single.merged]);
  return { map, findings: mapFindings({ map, drawing, snap, present, tooShort, others, lost }) };
}

function placedOutline(points: Float64Array): { readonly outline: Outline; readonly start: number } {
  const { ring, start } = fromTop(points);
  return { outline: { points: ring, corners: findCorners(ring, true) }, start };
}
