import { type Finding, lineName } from '../finding.js';
import type { AccentCount, LeftOut, SeamFit } from '../fit/fit.js';

/**
 * Accents of a line that do not get all their figures: how many, and why. One finding a line.
 * @param names what each accent of the treatment is called in a sentence
 */
export function accentsLeftOut({ seam, accents }: SeamFit, names: readonly string[]): Finding[] {
  const told = accents.flatMap((accent, index) =>
    accent.leftOut.length > 0 ? [sentence(accent, names[index])] : [],
  );
  if (told.length === 0) return [];
  const isGone = accents.some(({ asked, leftOut }) => asked > 0 && leftOut.length === asked);
  return [
    {
      level: isGone ? 'warning' : 'note',
      code: 'accents-left-out',
      message: `${lineName(seam)}: ${told.join('; ')}; smaller ones, or fewer, would have room`,
      seam,
      at: accents.flatMap(({ leftOut }) => leftOut)[0].at,
    },
  ];
}

/** '3 of 17 accents (french knot) are left out: 2 would reach past an end of it, 1 would crowd the next'. */
function sentence({ asked, leftOut }: AccentCount, name: string): string {
  const [of, are] = [`${leftOut.length} of ${asked}`, leftOut.length === 1 ? 'is' : 'are'];
  return `${of} accents (${name}) ${are} left out: ${reasonsOf(leftOut).map(reason).join(', ')}`;
}

/** How many figures are left out for one reason. */
export interface LeftOutReason extends Pick<LeftOut, 'why' | 'other'> {
  readonly count: number;
}

/** Reasons, each once, in the order in which they are met. */
export function reasonsOf(leftOut: readonly LeftOut[]): LeftOutReason[] {
  const reasons = new Map<string, LeftOutReason>();
  for (const { why, other } of leftOut) {
    const key = `${why} ${other ?? ''}`;
    const count = (reasons.get(key)?.count ?? 0) + 1;
    reasons.set(key, { why, ...(other !== undefined && { other }), count });
  }
  return [...reasons.values()];
}

function reason({ why, other, count }: LeftOutReason): string {
  if (why === 'past-end') return `${count} would reach past an end of it`;
  if (why === 'crowded') return `${count} would crowd the next`;
  if (why === 'on-junction') return `${count} would lie on the seam allowances of a junction`;
  return `${count} would lie on the thread of ${lineName(other!)}`;
}
