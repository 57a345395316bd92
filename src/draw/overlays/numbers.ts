import { runsOfStop } from '../../check/density/runs-of-stop.js';
import { runsOf } from '../../design/pieces.js';
import type { Box } from '../../geometry/box.js';
import { darkPlate, darkPlateSize, numberPlate, numberPlateSize, plateLeads } from '../number-plates.js';
import { type Plate, placesOnLines, plateRoom } from '../plate-room.js';
import { junctionBoxes, seamPlates } from '../seam-plates.js';
import type { LegendEntry } from './legend.js';
import type { Overlay } from './overlay.js';
import type { ShownWork } from './shown-work.js';

/** Clear cloth between two plates, in heights of their letters. */
const CLEAR = 0.12;

/**
 * Numbers of color stops where their longest run lies, and of seams in their middle if `withSeams`. Where a plate has no room
 * there it lies beside and a line leads to the place; where there is none beside either it is left out: the legend tells the look of every stop.
 * @param taken what no number may lie over, mm
 */
export function numbersOverlay(
  { map, stitches, frame }: ShownWork,
  withSeams: boolean,
  size: number,
  taken: readonly Box[] = [],
): Overlay {
  const ofSeams = withSeams && map ? seamPlates(map, (id) => numberPlateSize(id, size)) : [];
  const sewn = stitches.stops.flatMap(({ from, to }, stop) => (to > from ? [stop] : []));
  const ofStops = sewn.map(
    (stop): Plate => ({
      ...darkPlateSize(String(stop + 1), size),
      places: placesOnLines(runsOf(runsOfStop(stitches, stop))),
    }),
  );
  const spots = plateRoom([...ofSeams, ...ofStops], {
    clear: CLEAR * size,
    within: frame,
    taken: [...taken, ...(ofSeams.length ? junctionBoxes(map!, size * 0.4) : [])],
  });
  const plates = spots.map((spot, i) => {
    if (!spot) return '';
    const stop = i - ofSeams.length;
    return stop < 0 ? numberPlate(i + 1, spot.at, size) : darkPlate(String(sewn[stop] + 1), spot.at, size);
  });
  const entries: LegendEntry[] = [
    { sample: (x, y) => darkPlate('3', [x, y], 2), told: 'color stop, by its place in the order of sewing' },
    ...(ofSeams.length ? [{ sample: seamSample, told: 'seam' }] : []),
  ];
  return {
    picture: plateLeads(spots, size) + plates.join(''),
    part: { heading: 'Numbers', entries },
  };
}

const seamSample = (x: number, y: number): string => numberPlate(3, [x, y], 2);
