import type { StitchRecord } from '../../../src/stitches/stitch-record.js';
import { namesOf } from '../../state/bench/names.js';
import { benched } from '../../state/bench/on-bench.js';

export const POINTS = 'stitch-points';
export const LEGS = 'stitch-legs';

/** Names that can be typed elsewhere on the bench: points with their copies, and legs. */
export function KnownNames({ record }: { record: StitchRecord }) {
  const spots = benched.value?.unit?.spots.map(({ name }) => name) ?? namesOf(record, 'point');
  return (
    <>
      <datalist id={POINTS}>
        {spots.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <datalist id={LEGS}>
        {namesOf(record, 'leg').map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
    </>
  );
}
