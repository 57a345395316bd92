/** The one record for what is wrong or worth a look in a piece of work. Worst first on every screen. */
export type Level = 'error' | 'warning' | 'note';

export interface Finding {
  readonly level: Level;
  /** kebab-case, for programs */
  readonly code: string;
  /** a sentence for people: what, and what would help */
  readonly message: string;
  readonly seam?: number | 'outline';
  readonly stop?: number;
  /** mm in the block's frame, y down */
  readonly at?: readonly [number, number];
  /** from where to where along the seam, mm */
  readonly along?: readonly [number, number];
}

/** How a finding names a line of the block. */
export const lineName = (seam: number | 'outline'): string =>
  seam === 'outline' ? 'the outline' : `seam ${seam}`;

const rank: Record<Level, number> = { error: 0, warning: 1, note: 2 };

/** Findings with the worst first; equal levels keep their order. */
export function worstFirst(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => rank[a.level] - rank[b.level]);
}
