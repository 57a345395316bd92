import { InputError } from '../input-error.js';
import { checkSeam } from './known-seams.js';
import type { SeamMap } from './seam-map.js';
import type { JunctionWishes } from './wishes.js';

/** "4@3": seam 4 where it meets seam 3. */
export interface SeamMeeting {
  readonly seam: number;
  readonly meets: number;
}

export interface WishesByNumber {
  readonly through?: readonly SeamMeeting[];
  readonly join?: readonly SeamMeeting[];
  readonly split?: readonly SeamMeeting[];
}

/**
 * Wishes as places on a map: each at every junction of its two seams that can grant it.
 * @throws InputError when a seam does not exist, two do not meet, or a seam ends where it should run through or be split
 */
export function wishesOnMap(
  map: SeamMap,
  { through = [], join = [], split = [] }: WishesByNumber,
): JunctionWishes {
  const runsOn = (option: string, one: SeamMeeting) => {
    const all = meetingsOf(map, option, one);
    const passed = all.filter(({ arms }) => arms.filter(({ seam }) => seam === one.seam).length > 1);
    if (passed.length) return passed.map(({ at }) => ({ at, seam: one.seam }));
    throw new InputError(
      'seam-ends-there',
      `${option} ${one.seam}@${one.meets}`,
      `seam ${one.seam} ends where it meets seam ${one.meets}`,
      `name a seam that runs on there, or make it one line with another: --join ${one.seam}@${one.meets}`,
    );
  };
  return {
    through: through.flatMap((one) => runsOn('--through', one)),
    split: split.flatMap((one) => runsOn('--split', one)),
    join: join.flatMap((one) =>
      inside(meetingsOf(map, '--join', one), one).map(({ at }) => ({
        at,
        seams: [one.seam, one.meets] as const,
      })),
    ),
  };
}

/**
 * The junctions where two seams meet.
 * @throws InputError when a seam does not exist or the two do not meet
 */
export function meetingsOf(map: SeamMap, option: string, { seam, meets }: SeamMeeting): SeamMap['junctions'] {
  const where = `${option} ${seam}@${meets}`;
  for (const id of [seam, meets]) checkSeam(map, id, where);
  const shared = map.junctions.filter(({ arms }) =>
    [seam, meets].every((id) => arms.some((arm) => arm.seam === id)),
  );
  if (seam !== meets && shared.length) return shared;
  const neighbors = map.junctions
    .flatMap(({ arms }) => (arms.some((arm) => arm.seam === seam) ? arms : []))
    .flatMap((arm) => (arm.seam === seam || arm.seam === 'outline' ? [] : arm.seam));
  const near = [...new Set(neighbors)].sort((a, b) => a - b);
  throw new InputError(
    'no-such-meeting',
    where,
    seam === meets ? 'a seam does not meet itself' : `seam ${seam} does not meet seam ${meets}`,
    near.length ? `it meets ${near.join(', ')}` : 'it meets no other seam',
  );
}

function inside(junctions: SeamMap['junctions'], { seam, meets }: SeamMeeting): SeamMap['junctions'] {
  const inner = junctions.filter(({ onOutline }) => !onOutline);
  if (inner.length) return inner;
  throw new InputError(
    'join-at-outline',
    `--join ${seam}@${meets}`,
    'they meet on the outline, where every seam ends',
    'leave them as they are',
  );
}
