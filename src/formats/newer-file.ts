import { InputError } from '../input-error.js';

/** A file of a later program: it is not wrong, but cannot be read here. */
export function newerFile(where: string, format: number, known: number): InputError {
  return new InputError(
    'newer-file',
    where,
    `the file is of format ${format}, from a newer program`,
    `this program reads format ${known}; update it`,
  );
}
