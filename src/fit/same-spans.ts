import type { Span } from './spans.js';

/** Whether two lists of spans of one line are the same in all that is laid by them. */
export function sameSpans(a: readonly Span[], b: readonly Span[]): boolean {
  return a.length === b.length && a.every((span, i) => same(span, b[i]));
}

/**
 * Whether two values hold the same numbers and words. Spans are plain records, a few levels deep; the arms in them are the
 * map's own.
 */
function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => same((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]));
}
