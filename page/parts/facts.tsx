import { draft } from '../state/drawing/board.js';
import { minutes, plural } from '../state/words.js';
import { picture, pictured, work } from '../state/work.js';

/** Time, trims, stops: always in view. */
export function Facts() {
  const report = picture.value?.report;
  if (!report) return null;
  const trims = report.stops.reduce((sum, stop) => sum + stop.trims, 0);
  const { totals } = report;
  const isBusy = work.value !== pictured.value || draft.value !== null;
  if (totals.stitches === 0) {
    return (
      <p class="facts" aria-busy={isBusy}>
        Nothing to sew yet
      </p>
    );
  }
  return (
    <p class="facts" aria-busy={isBusy}>
      <span>{minutes(totals.minutes)}</span>
      <span>{plural(totals.stops, 'stop')}</span>
      <span>{plural(trims, 'trim')}</span>
      <span>{totals.stitches.toLocaleString('en-US')} stitches</span>
      <span>{Math.round(totals.threadM)} m of thread</span>
    </p>
  );
}
