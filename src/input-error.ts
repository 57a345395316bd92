/**
 * What a person gave cannot be used. Three parts make its one line: where it is (file and place), what is wrong, what
 * would be right. The command line prints it and ends with status 2; nothing has been written by then.
 */
export class InputError extends Error {
  constructor(
    /** kebab-case, for programs */
    readonly code: string,
    /** file, option, or place inside a file: "panel.svg line 12", "--width" */
    readonly where: string,
    readonly wrong: string,
    readonly right: string,
    /** keys and indices from the top of the JSON file that holds it, where it is in one: its line is found by them */
    readonly path: readonly (string | number)[] = [],
  ) {
    super(`${shortened(wordsShortened(where))}: ${wordsShortened(wrong)}; ${wordsShortened(right)}`);
    this.name = 'InputError';
  }
}

/** Several things that cannot be used, of which the first speaks where there is room for one only. */
export class InputErrors extends InputError {
  /** @param errors at least one, in the order in which they are told */
  constructor(readonly errors: readonly InputError[]) {
    const [{ code, where, wrong, right, path }, ...more] = errors;
    super(code, where, wrong, more.length ? `${right} (and ${more.length} more mistakes)` : right, path);
  }
}

/** Each of the things that cannot be used. */
export const errorsIn = (error: InputError): readonly InputError[] =>
  error instanceof InputErrors ? error.errors : [error];

/** More lines about one file help nobody. */
const MOST_TOLD = 20;

/** The first mistakes of a file that has many, and how many more there are. */
export function firstOf<T>(
  mistakes: readonly T[],
  where: string,
  tell: (mistake: T) => InputError,
): InputError[] {
  const more = mistakes.length - MOST_TOLD;
  // one line more is no shorter than the mistake that it would count
  if (more <= 1) return mistakes.map(tell);
  const rest = new InputError('more-mistakes', where, `and ${more} more mistakes`, 'correct the first ones');
  return [...mistakes.slice(0, MOST_TOLD).map(tell), rest];
}

/** A path, or a place in a file, tells nobody more beyond so many characters. */
const LONGEST_PLACE = 160;
/** The same of a name or value in quotes. */
const LONGEST_QUOTE = 80;
const LONG_WORD = /\S{161,}/g;
/** In quotes: the first with no letter before it and the last with none behind it, so that it is no apostrophe. */
const LONG_QUOTE = /(?<![^\s(:])(["'])((?:(?!\1(?![^\s;:,.)?])).){81,})\1(?![^\s;:,.)?])/gs;

/** Text that a person gave, by its beginning and end where it is long. */
export const shortened = (text: string, most = LONGEST_PLACE): string =>
  text.length <= most ? text : `${text.slice(0, 0.6 * most)}...${text.slice(-0.3 * most)}`;

/** A message in which no word and nothing in quotes goes on and on. */
export const wordsShortened = (message: string): string =>
  message
    .replace(LONG_QUOTE, (_, mark: string, text: string) => `${mark}${shortened(text, LONGEST_QUOTE)}${mark}`)
    .replace(LONG_WORD, (word) => shortened(word, LONGEST_QUOTE));
