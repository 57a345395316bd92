import type { Finding } from '../finding.js';

/** Something of a drawing that is not read as it is meant there. */
export interface Unread {
  /** name of the element or property */
  readonly what: string;
  /** file, line and element, for messages */
  readonly at: string;
}

/** Elements that are seen in a drawing and hold no lines. */
export const HOLD_NO_LINES: ReadonlySet<string> = new Set(['text', 'image', 'foreignObject']);

/**
 * One finding a kind, with a count and the first place.
 *
 * @param clipped elements with lines of which the drawing shows only a part
 * @param lineless elements that are seen and hold no lines
 */
export function unreadFindings(clipped: readonly Unread[], lineless: readonly Unread[]): Finding[] {
  return [
    ...byKind(clipped).map(({ what, count, at }): Finding => {
      const has = count === 1 ? `${at} has a ${what}` : `${count} elements have a ${what}, the first ${at}`;
      const message = `${has}; it is not applied, and the lines are read whole`;
      return { level: 'note', code: 'clip-ignored', message };
    }),
    ...byKind(lineless).map(({ what, count, at }): Finding => {
      const is = count === 1 ? `${at} holds` : `${count} ${what} elements, the first ${at}, hold`;
      const right = what === 'text' ? 'turn text into paths' : 'draw it as paths';
      const message = `${is} no lines and is left out; ${right} if it is to be sewn along`;
      return { level: 'note', code: 'no-lines-in-it', message };
    }),
  ];
}

function byKind(unread: readonly Unread[]): (Unread & { readonly count: number })[] {
  const kinds = new Map<string, Unread & { readonly count: number }>();
  for (const one of unread) {
    const known = kinds.get(one.what);
    kinds.set(one.what, { ...(known ?? one), count: (known?.count ?? 0) + 1 });
  }
  return [...kinds.values()];
}
