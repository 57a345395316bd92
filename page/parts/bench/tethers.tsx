import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import type { UnitSpot } from '../../core/bench-messages.js';
import { legsOf, pointsOfLeg } from '../../state/bench/legs.js';

/** From the ends of a leg to what pulls it: so that one sees which bend belongs where. */
export function Tethers({ record, spots }: { record: StitchRecord; spots: readonly UnitSpot[] }) {
  const at = new Map(spots.map((spot) => [spot.name, spot]));
  return (
    <>
      {legsOf(record).map(({ leg }) => {
        if (!('via' in leg) || !leg.via) return null;
        const [from, to, ...via] = pointsOfLeg(leg).map((name) => at.get(name));
        const way = [from, ...via, to].flatMap((spot) => (spot ? [`${spot.u},${-spot.v}`] : []));
        return <polyline key={leg.name} class="tether" points={way.join(' ')} />;
      })}
    </>
  );
}
