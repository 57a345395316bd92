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
 * @param selectors of style rules that are not applied
 */
export function unreadFindings(
  clipped: readonly Unread[],
  lineless: readonly Unread[],
  selectors: readonly string[],
  where: string,
): Finding[] {
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
    ...(selectors.length ? [rulesPassedOver(selectors, where)] : []),
  ];
}

function rulesPassedOver(selectors: readonly string[], where: string): Finding {
  const rules = selectors.length === 1 ? 'a style rule' : `${selectors.length} style rules, the first`;
  const message =
    `${where} has ${rules} for "${selectors[0]}", not applied: selectors are read that name one element, class or id; ` +
    'if lines or colors are wrong, save the drawing with its styles in the elements';
  return { level: 'note', code: 'style-passed-over', message };
}

function byKind(unread: readonly Unread[]): (Unread & { readonly count: number })[] {
  const kinds = new Map<string, Unread & { readonly count: number }>();
  for (const one of unread) {
    const known = kinds.get(one.what);
    kinds.set(one.what, { ...(known ?? one), count: (known?.count ?? 0) + 1 });
  }
  return [...kinds.values()];
}
