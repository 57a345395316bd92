import type { MeetingPlace } from '../core/messages.js';
import { lineTitle } from './words.js';

/** "4, 5 and 9" */
export function listed(seams: readonly number[]): string {
  const all = [...new Set(seams)].sort((a, b) => a - b);
  return all.length < 2 ? all.join() : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
}

const nameAll = (seams: readonly number[]): string =>
  seams.length < 2 ? seams.map(lineTitle).join() : `Seams ${listed(seams)}`;

function whereAlong(share: number): string {
  if (share < 0.02) return 'at its start';
  if (share > 0.98) return 'at its end';
  return `${Math.round(100 * share)} % along`;
}

/** "Seams 4 and 9, 40 % along" */
export const meetingTitle = ({ others, along }: MeetingPlace): string =>
  `${nameAll(others) || 'Parted from itself'}, ${whereAlong(along)}`;
