import { closest, distance } from 'fastest-levenshtein';
import { InputError } from '../input-error.js';

/** Parser of an option that takes one of a few words. */
export function choiceOption<Word extends string>(
  option: string,
  words: readonly Word[],
): (word: string) => Word {
  return (word) => {
    if ((words as readonly string[]).includes(word)) return word as Word;
    throw new InputError('bad-choice', option, `'${word}' is no choice`, `choose ${words.join(', ')}`);
  };
}

/** Finds a name in a dictionary; for one that is not there, the nearest one is suggested. */
export function named<T>(dictionary: ReadonlyMap<string, T>, name: string, where: string): T {
  const found = dictionary.get(name);
  if (found !== undefined) return found;
  const names = [...dictionary.keys()];
  const near = names.length ? closest(name.toLowerCase(), names) : '';
  const right =
    near && distance(name.toLowerCase(), near) <= Math.max(2, near.length / 2)
      ? `did you mean '${near}'?`
      : `choose ${names.join(', ')}`;
  throw new InputError('no-such-stitch', where, `there is no stitch '${name}'`, right);
}
