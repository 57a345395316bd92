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
