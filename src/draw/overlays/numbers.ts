import { runsOfStop } from '../../check/density/runs-of-stop.js';
import type { SewnStitches } from '../../check/density/sewn-stitches.js';
import { type Points, polylineLength } from '../../geometry/polyline.js';
import { lines, seamNumber, seamNumberSpot } from '../map-picture.js';
import { darkPlate, numberPlate } from '../number-plates.js';
import { element, type Frame } from '../svg.js';
import { pathData } from '../svg-pen.js';
import type { LegendEntry } from './legend.js';
import type { Overlay } from './overlay.js';
import { type PlateSpot, plateRoom } from './plate-room.js';
import type { ShownWork } from './shown-work.js';

const INK = '#22313f';

/** Numbers of color stops where their longest run lies, and of seams in their middle if `withSeams`. */
export function numbersOverlay(
  { map, stitches, frame }: ShownWork,
  withSeams: boolean,
  size: number,
): Overlay {
  const seams = withSeams && map ? map.seams : [];
  const taken = seams.map((seam) => seamNumberSpot(seam, map!, size));
  const entries: LegendEntry[] = [
    { sample: (x, y) => darkPlate('3', [x, y], 2), told: 'color stop, by its place in the order of sewing' },
    ...(seams.length ? [{ sample: seamSample, told: 'seam' }] : []),
  ];
  return {
    picture:
      element('g', lines(INK, size * 0.14), ...seams.map((seam) => seamNumber(seam, map!, size))) +
      stopNumbers(stitches, size, frame, taken),
    part: { heading: 'Numbers', entries },
  };
}

const seamSample = (x: number, y: number): string => numberPlate(3, [x, y], 2);

/**
 * The number of each color stop that has stitches; where a plate has no room on its stop's lines, a line leads from it there, and
 * where there is none beside them either it is left out: the legend tells the look of every stop.
 */
function stopNumbers(
  stitches: SewnStitches,
  size: number,
  frame: Frame,
  taken: readonly (readonly [number, number])[],
): string {
  const sewn = stitches.stops.flatMap(({ from, to }, stop) => (to > from ? [stop] : []));
  const wide = sewn.length < 100 ? APART : APART_OF_THREE_DIGITS;
  const spots = plateRoom(
    sewn.map((stop) => linesOf(stitches, stop)),
    wide * size,
    frame,
    taken,
  );
  const leads = spots.filter((spot) => spot !== null && spot.at !== spot.on) as PlateSpot[];
  const d = pathData((pen) => {
    for (const { at, on } of leads) {
      pen.move(...on);
      pen.line(...at);
    }
  });
  return (
    (leads.length ? element('g', lines('#fff', size * 0.3), element('path', { d })) : '') +
    (leads.length ? element('g', lines(INK, size * 0.14), element('path', { d })) : '') +
    spots.map((spot, i) => (spot ? darkPlate(String(sewn[i] + 1), spot.at, size) : '')).join('')
  );
}

/** Between the middles of plates of two digits, and of three, in heights of their digits. */
const APART = 2.4;
const APART_OF_THREE_DIGITS = 3.2;

/** The runs of a stop, the longest first. */
function linesOf(stitches: SewnStitches, stop: number): Points[] {
  const { xy, start } = runsOfStop(stitches, stop);
  const runs = Array.from({ length: start.length - 1 }, (_, run) =>
    xy.subarray(2 * start[run], 2 * start[run + 1]),
  );
  const long = new Map(runs.map((run) => [run, polylineLength(run)]));
  return runs.sort((a, b) => long.get(b)! - long.get(a)!);
}
