import type { Dressing, Treatment, Work } from '../../src/formats/dressing.js';
import type { Line } from '../core/messages.js';
import { withThreads } from '../core/with-threads.js';
import { treatmentOf } from './edits.js';
import { picture } from './work.js';

/** An offer's work in the dressing's threads, the first of them the one that the line has now. */
export function inThreadsOf(dressing: Dressing, line: Line, offered: Work): Work {
  const first = treatmentOf(dressing, line)?.rows[0].thread ?? 0;
  return withThreads(offered, dressing.threads.length, first);
}

/** How a treatment remembers a line that has none yet. */
export const referenceOf = (line: Line): Treatment['seam'] =>
  picture.value?.references.find(({ id }) => id === line) ?? { id: line, middle: null, ends: null };
