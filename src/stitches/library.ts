import { InputError } from '../input-error.js';
import { nearestName } from './nearest-name.js';
import type { Stitch } from './stitch.js';

/** Stitches in the order in which they are looked up: a personal library stands before the built-in one. */
export type Library = readonly Stitch[];

/**
 * A stitch by its name, title or another name, capitals, hyphens and spaces aside. Names come before titles, and
 * titles before other names.
 * @throws InputError with the nearest name when there is none
 */
export function findStitch(library: Library, wanted: string): Stitch {
  const key = plain(wanted);
  const found =
    library.find((stitch) => plain(stitch.name) === key) ??
    library.find((stitch) => plain(stitch.title) === key) ??
    library.find((stitch) => stitch.otherNames.some((other) => plain(other) === key));
  if (found) return found;
  const calls = library.flatMap((stitch) => [stitch.name, stitch.title, ...stitch.otherNames]);
  throw new InputError(
    'unknown-stitch',
    `stitch "${wanted}"`,
    'there is no such stitch',
    calls.length ? `did you mean "${nearestName(wanted, calls)}"?` : 'the dictionary is empty',
  );
}

const plain = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '-');
