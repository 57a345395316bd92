/** What was, what is, and what was undone; without limit. Parts that did not change are shared between states. */
export interface History<T> {
  readonly past: readonly T[];
  readonly now: T;
  readonly future: readonly T[];
  /** what is being dragged: further changes by the same grip are one step */
  readonly grip: string | null;
}

export const begun = <T>(now: T): History<T> => ({ past: [], now, future: [], grip: null });

/** @param grip changes that follow each other by the same grip are undone together */
export function changed<T>(history: History<T>, now: T, grip: string | null = null): History<T> {
  if (now === history.now) return history;
  const isSame = grip !== null && grip === history.grip;
  return { past: isSame ? history.past : [...history.past, history.now], now, future: [], grip };
}

/** The grip is let go: the next change by it is a step of its own. */
export const letGo = <T>(history: History<T>): History<T> => ({ ...history, grip: null });

export function undone<T>(history: History<T>): History<T> {
  const { past, now, future } = history;
  if (past.length === 0) return history;
  return { past: past.slice(0, -1), now: past[past.length - 1], future: [now, ...future], grip: null };
}

export function redone<T>(history: History<T>): History<T> {
  const { past, now, future } = history;
  if (future.length === 0) return history;
  return { past: [...past, now], now: future[0], future: future.slice(1), grip: null };
}
