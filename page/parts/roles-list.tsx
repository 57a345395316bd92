import { ROLE_NAMES, ROLES, type Role, type StopRole } from '../../src/block/roles/role.js';
import { change, nameRole } from '../state/actions.js';
import { withLeftOut, withStopKeptClear } from '../state/block-edits.js';
import { lengthsIn } from '../state/units.js';
import { picture, work } from '../state/work.js';
import { ThreadPicture } from './thread-picture.js';

/** What each color stop of a stitch file was taken for, as pictures; the maker says where it is something else. */
export function RolesList({ roles }: { roles: readonly StopRole[] }) {
  const block = picture.value?.block;
  if (!block) return null;
  return (
    <section>
      <h2>What the file sews</h2>
      <p class="hint">Each stop was taken for what it looks like. Say so where it is something else.</p>
      <ol class="stops">
        {roles.map(({ stop, role, evidence }) => (
          <li key={stop}>
            <ThreadPicture block={block} runs={block.existing.find((one) => one.stop === stop)?.runs} />
            <label class="what" title={lengthsIn(evidence)}>
              <span>Stop {stop}</span>
              <select
                value={role}
                onChange={({ currentTarget }) => void nameRole(stop, currentTarget.value as Role)}
              >
                {ROLES.map((one) => (
                  <option key={one} value={one}>
                    {ROLE_NAMES[one]}
                  </option>
                ))}
              </select>
            </label>
            <StopSaid stop={stop} />
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What becomes of a stop: sewn as it is, sewn with nothing over it, or not sewn. */
function StopSaid({ stop }: { stop: number }) {
  const dressing = work.value?.dressing;
  if (!dressing) return null;
  const isOut = dressing.block.leaveOut?.includes(stop) ?? false;
  const isClear = dressing.keepClear?.some(({ stops }) => stops?.includes(stop)) ?? false;
  return (
    <select
      class="said"
      aria-label={`What becomes of stop ${stop}`}
      value={isOut ? 'out' : isClear ? 'clear' : ''}
      onChange={({ currentTarget: { value } }) =>
        change((was) => withLeftOut(withStopKeptClear(was, stop, value === 'clear'), stop, value === 'out'))
      }
    >
      <option value="">sewn</option>
      <option value="clear">kept clear</option>
      <option value="out">left out</option>
    </select>
  );
}
