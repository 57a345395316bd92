import { busy, told } from '../state/work.js';

/** What happens, for screen readers; what takes a while, for everyone. */
export function Told() {
  return (
    <>
      <div class="unseen" role="status">
        {told.value}
      </div>
      {busy.value && (
        <div class="busy" aria-hidden="true">
          {busy.value} …
        </div>
      )}
    </>
  );
}
