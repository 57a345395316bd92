import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import { sewnTo } from '../state/look.js';
import { sewnTitle } from '../state/sewn-title.js';
import { picture, touched, work } from '../state/work.js';

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
  const wholeAgain = () => {
    play(false);
    sewnTo.value = null;
  };
  useEffect(() => wholeAgain, []);
  // who goes on working looks at the whole block again
  const watched = useRef<unknown[] | null>(null);
  useSignalEffect(() => {
    const worked = [work.value?.dressing, touched.value];
    const isSame = watched.current === null || worked.every((one, k) => one === watched.current![k]);
    watched.current = worked;
    if (!isSame) wholeAgain();
  });
  return (
    <div class="sewn-to">
      <button
        type="button"
        onClick={() => {
          if (!isPlayed) sewnTo.value ??= 0;
          play(!isPlayed);
        }}
      >
        {isPlayed ? 'Halt' : sewnTo.value === null ? 'Watch it sewn' : 'Sew on'}
      </button>
      <label>
        <span class="unseen">Sewn up to stop</span>
        <input
          type="range"
          min={0}
          max={stops.length}
          value={now}
          aria-valuetext={sewnTitle(now, stops)}
          onInput={({ currentTarget }) => {
            const value = Number(currentTarget.value);
            sewnTo.value = value === stops.length ? null : value;
          }}
        />
      </label>
    </div>
  );
}
