import { useEffect, useState } from 'preact/hooks';
import { sewnTo } from '../state/look.js';
import { picture } from '../state/work.js';

/** A stop every so often, ms. */
const PACE = 700;

/** The sewing, stop by stop: drawn so far, or played. */
export function SewnTo() {
  const [isPlayed, play] = useState(false);
  const stops = picture.value?.stops ?? [];
  const now = Math.min(sewnTo.value ?? stops.length, stops.length);
  useEffect(() => {
    if (!isPlayed) return;
    const clock = setInterval(() => {
      const next = (sewnTo.value ?? 0) + 1;
      if (next >= stops.length) play(false);
      sewnTo.value = next >= stops.length ? null : next;
    }, PACE);
    return () => clearInterval(clock);
  }, [isPlayed, stops.length]);
  const title = now === 0 ? 'before the first stop' : `${now} of ${stops.length}: ${stops[now - 1]?.title}`;
  return (
    <div class="sewn-to">
      <button
        type="button"
        onClick={() => {
          if (!isPlayed) sewnTo.value = 0;
          play(!isPlayed);
        }}
      >
        {isPlayed ? 'Halt' : 'Watch it sewn'}
      </button>
      <label>
        <span class="unseen">Sewn up to stop</span>
        <input
          type="range"
          min={0}
          max={stops.length}
          value={now}
          aria-valuetext={title}
          onInput={({ currentTarget }) => {
            const value = Number(currentTarget.value);
            sewnTo.value = value === stops.length ? null : value;
          }}
        />
      </label>
      {sewnTo.value !== null && <output>{title}</output>}
    </div>
  );
}
