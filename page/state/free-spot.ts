import { freest, type Round } from './free-place.js';

type Place = readonly [number, number];

interface Area {
  readonly width: number;
  readonly height: number;
}

/** Spots are tried in rings round the place that was meant, so far apart and so many, mm. */
const RING = 10;
const RINGS = 8;
const AROUND = 12;

/** On the block, as near as there is room to where it was meant, so that it lies on nothing that stands there; mm. */
export function freeSpot(meant: Place, reach: number, there: readonly Round[], block: Area): Place {
  const spots: Place[] = [meant];
  for (let ring = 1; ring <= RINGS; ring++) {
    for (let k = 0; k < AROUND; k++) {
      const angle = (2 * Math.PI * k) / AROUND;
      spots.push([meant[0] + ring * RING * Math.cos(angle), meant[1] + ring * RING * Math.sin(angle)]);
    }
  }
  const isOn = ([x, y]: Place) =>
    x >= reach && y >= reach && x <= block.width - reach && y <= block.height - reach;
  const on = spots.filter(isOn);
  return on.length > 0 ? on[freest(on, reach, there)] : meant;
}
