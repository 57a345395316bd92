import { runsOfStop } from '../../check/density/runs-of-stop.js';
import type { SewnStitches } from '../../check/density/sewn-stitches.js';
import type { Points } from '../../geometry/polyline.js';
import { lines, seamNumber, seamNumberSpot } from '../map-picture.js';
import { darkPlate, numberPlate, plateSpots } from '../number-plates.js';
import { element } from '../svg.js';
import type { LegendEntry } from './legend.js';
import type { Overlay } from './overlay.js';
import type { ShownWork } from './shown-work.js';

const INK = '#22313f';

/** Numbers of color stops where their longest run lies, and of seams in their middle if `withSeams`. */
export function numbersOverlay({ map, stitches }: ShownWork, withSeams: boolean, size: number): Overlay {
  const seams = withSeams && map ? map.seams : [];
  const taken = seams.map((seam) => seamNumberSpot(seam, map!, size));
  const entries: LegendEntry[] = [
    { sample: (x, y) => darkPlate('3', [x, y], 2), told: 'color stop, by its place in the order of sewing' },
    ...(seams.length ? [{ sample: seamSample, told: 'seam' }] : []),
  ];
  return {
    picture:
      element('g', lines(INK, size * 0.14), ...seams.map((seam) => seamNumber(seam, map!, size))) +
      stopNumbers(stitches, size, taken),
    part: { heading: 'Numbers', entries },
  };
}

const seamSample = (x: number, y: number): string => numberPlate(3, [x, y], 2);

/** The number of each color stop that has stitches. */
function stopNumbers(
  stitches: SewnStitches,
  size: number,
  taken: readonly (readonly [number, number])[],
): string {
  const sewn = stitches.stops.flatMap(({ from, to }, stop) => (to > from ? [stop] : []));
  const spots = plateSpots(
    sewn.map((stop) => linesOf(stitches, stop)),
    size,
    taken,
  );
  return sewn.map((stop, i) => darkPlate(String(stop + 1), spots[i], size)).join('');
}

function linesOf(stitches: SewnStitches, stop: number): Points[] {
  const { xy, start } = runsOfStop(stitches, stop);
  return Array.from({ length: start.length - 1 }, (_, run) =>
    xy.subarray(2 * start[run], 2 * start[run + 1]),
  );
}
