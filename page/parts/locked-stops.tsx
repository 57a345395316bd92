import { ROLE_NAMES } from '../../src/block/roles/role.js';
import type { DrawnBlock } from '../core/messages.js';
import { work } from '../state/work.js';
import { ThreadPicture } from './thread-picture.js';

/** A stop that came with the block: its place in the order of sewing, from 0, and what it sews. */
export interface LockedStop {
  readonly place: number;
  readonly runs: readonly Float64Array[];
}

/** More than these stand folded together: the new stops are what is looked for. */
const FEW = 3;

/** Stops that came with the block and follow each other: they stay where they are. */
export function LockedStops({ block, stops }: { block: DrawnBlock; stops: readonly LockedStop[] }) {
  const isFew = stops.length <= FEW;
  const items = stops.map(({ place, runs }) => {
    const role = roleOf(block, runs);
    return (
      <li key={place} class="locked" data-place={place}>
        <Lock />
        <ThreadPicture block={block} runs={runs} />
        <span class="what">
          Stop {place + 1}
          {isFew ? ' came with the block' : role && `, ${role}`}
        </span>
        <span class="aside">locked</span>
      </li>
    );
  });
  if (isFew) return <>{items}</>;
  return (
    <li class="locked-run">
      <details>
        <summary>
          <Lock />
          <span class="what">
            Stops {stops[0].place + 1} to {stops[stops.length - 1].place + 1} came with the block
          </span>
          <span class="aside">locked</span>
        </summary>
        <ol class="stops">{items}</ol>
      </details>
    </li>
  );
}

/** What a stop of the file was taken for. */
function roleOf(block: DrawnBlock, runs: LockedStop['runs']): string | null {
  const stop = block.existing.find((one) => one.runs === runs)?.stop;
  const role = work.value?.roles?.find((one) => one.stop === stop)?.role;
  return role ? ROLE_NAMES[role] : null;
}

/** Drawn, since not every machine has a letter for it. */
const Lock = () => (
  <svg class="grip lock" viewBox="0 0 16 16" aria-hidden="true">
    <path d="M3 7h10v7H3Z" />
    <path d="M5 7V5a3 3 0 0 1 6 0v2" class="bow" />
  </svg>
);
