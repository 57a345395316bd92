import { InputError } from '../input-error.js';
import { nearestName } from './nearest-name.js';

/** What a dictionary holds goes by its file's name, its title and other names. */
interface Named {
  readonly name: string;
  readonly title: string;
  readonly otherNames: readonly string[];
}

/**
 * Something in a dictionary by its name, title or another name, capitals, hyphens and spaces aside. Names come before
 * titles, and titles before other names.
 * @throws InputError with the nearest name when there is none
 */
export function findNamed<T extends Named>(
  shelf: ReadonlyMap<string, T>,
  wanted: string,
  kind: 'stitch' | 'ornament' | 'treatment',
): T {
  const found = findIfNamed(shelf, wanted);
  if (found) return found;
  const calls = [...shelf.values()].flatMap(({ name, title, otherNames }) => [name, title, ...otherNames]);
  throw new InputError(
    `unknown-${kind}`,
    `${kind} "${wanted}"`,
    `there is no such ${kind}`,
    calls.length ? `did you mean "${nearestName(wanted, calls)}"?` : 'the dictionary has none',
  );
}

/** The same, undefined when there is none. */
export function findIfNamed<T extends Named>(shelf: ReadonlyMap<string, T>, wanted: string): T | undefined {
  const key = plainName(wanted);
  const known = shelf.get(wanted) ?? shelf.get(key);
  if (known) return known;
  const all = [...shelf.values()];
  return (
    all.find(({ name }) => plainName(name) === key) ??
    all.find(({ title }) => plainName(title) === key) ??
    all.find(({ otherNames }) => otherNames.some((other) => plainName(other) === key))
  );
}

/** A name as it is looked up: names that are alike but for capitals, hyphens and spaces are one. */
export const plainName = (name: string): string =>
  name
    // an umlaut may be one sign, or a letter and its dots: systems differ in how they keep a file's name
    .normalize('NFC')
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '-');
