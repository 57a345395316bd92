import { closest } from 'fastest-levenshtein';

/** The name that differs least from what was written, capitals aside. */
export function nearestName(written: string, names: readonly string[]): string {
  const lower = names.map((name) => name.toLowerCase());
  return names[lower.indexOf(closest(written.toLowerCase(), lower))];
}
