import { draft } from '../state/drawing/board.js';
import { minutes, plural } from '../state/words.js';
import { picture, pictured, work } from '../state/work.js';

/** Time, trims, stops: always in view. */
export function Facts() {
  const report = picture.value?.report;
  if (!report) return null;
  const trims = report.stops.reduce((sum, stop) => sum + stop.trims, 0);
  const { totals } = report;
  return (
    <p class="facts" aria-busy={work.value !== pictured.value || draft.value !== null}>
      <span>{minutes(totals.minutes)}</span>
      <span>{plural(totals.stops, 'stop')}</span>
      <span>{plural(trims, 'trim')}</span>
      <span>{totals.stitches.toLocaleString('en-US')} stitches</span>
      <span>{Math.round(totals.threadM)} m of thread</span>
    </p>
  );
}
