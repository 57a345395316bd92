import { InputError } from '../input-error.js';

/** Signs in a file of the dictionary; the built-in ones have about 3,000. */
const LONGEST_FILE = 200_000;
/** Brackets inside brackets; files of the dictionary have 6, and what walks through a value takes a few hundred. */
const DEEPEST = 32;

/** Something that is wrong with the text of a file: the place in it, what is wrong, what would be right. */
export interface TextMistake {
  readonly place: string;
  readonly wrong: string;
  readonly right: string;
}

/**
 * The value in the text of a stitch, an ornament or a treatment that nobody has checked, and what is wrong with the text
 * although it can be read: comments and commas that JSON does not have, names said twice in one object, of which JSON
 * itself would drop the first without a word, and signs that could drive the terminal they are shown on.
 * @param what an object with so and so: what the file should be
 * @throws InputError when the text is absurdly long or deep, can not be read as JSON, or is no object
 */
export async function dictionaryJson(
  source: string,
  where: string,
  what: string,
): Promise<{ value: object; mistakes: TextMistake[] }> {
  if (source.length > LONGEST_FILE) {
    const wrong = `${source.length} signs are too many`;
    throw new InputError('file-too-long', where, wrong, `at most ${LONGEST_FILE}`);
  }
  const text = source.replace(/^\uFEFF/, '');
  if (depthOf(text) > DEEPEST) {
    throw new InputError(
      'nested-too-deeply',
      where,
      'its brackets are nested too deeply',
      `at most ${DEEPEST} levels`,
    );
  }
  const { value, mistakes } = await parsed(text, where);
  const file = asObject(value, where, what);
  mistakes.push(...controlCharacters(file, ''), ...(await namesSaidTwice(text)));
  return { value: file, mistakes };
}

/** @throws InputError when a value is no object, as every file of the dictionary is */
export function asObject(value: unknown, where: string, what: string): object {
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return value;
  const is = Array.isArray(value)
    ? 'a list in brackets'
    : value === null
      ? 'null'
      : `a ${spoken[typeof value]}`;
  throw new InputError('no-object', where, `it is ${is}`, `it should be ${what}`);
}

const spoken: Partial<Record<string, string>> = {
  string: 'text',
  number: 'number',
  boolean: 'mere true or false',
};

async function parsed(text: string, where: string): Promise<{ value: unknown; mistakes: TextMistake[] }> {
  try {
    return { value: JSON.parse(text), mistakes: [] };
  } catch {
    const { nearlyJson, notJson } = await import('./json-place.js');
    const nearly = await nearlyJson(text);
    const right = 'files of the dictionary are JSON';
    if (nearly) return { value: nearly.value, mistakes: nearly.mistakes.map((one) => ({ ...one, right })) };
    throw await notJson(text, where, right);
  }
}

/** Names and texts that could drive the terminal they are shown on. */
function controlCharacters(value: unknown, place: string): TextMistake[] {
  const mistakesOf = (text: string, at: string): TextMistake[] => {
    const wrong = `${JSON.stringify(text)} has a line end or a control character in it`;
    return /\p{Cc}/u.test(text)
      ? [{ place: at, wrong, right: 'names and texts that stay on their line' }]
      : [];
  };
  if (typeof value === 'string') return mistakesOf(value, place);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => {
    const inner = Array.isArray(value) ? `${place}[${key}]` : /\p{Cc}/u.test(key) ? place : `${place}.${key}`;
    return [...mistakesOf(key, place), ...controlCharacters(part, inner)].map((one) => ({
      ...one,
      place: one.place.replace(/^\./, ''),
    }));
  });
}

/** How deep brackets and braces outside of quotes are nested. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (const [sign] of text.matchAll(/"(?:[^"\\]|\\.)*"|[[\]{}]/g)) {
    if (sign === '[' || sign === '{') deepest = Math.max(deepest, ++depth);
    else if (sign === ']' || sign === '}') depth--;
  }
  return deepest;
}

async function namesSaidTwice(text: string): Promise<TextMistake[]> {
  const { visit } = await import('jsonc-parser');
  const open: Set<string>[] = [];
  const twice: TextMistake[] = [];
  const noticed = {
    onObjectBegin: () => {
      open.push(new Set());
    },
    onObjectEnd: () => {
      open.pop();
    },
    onObjectProperty: (name: string, _offset: number, _length: number, line: number) => {
      const names = open[open.length - 1];
      if (names.has(name)) {
        const wrong = `${JSON.stringify(name)} is said twice in one object`;
        twice.push({ place: `line ${line + 1}`, wrong, right: 'say it once' });
      }
      names.add(name);
    },
  };
  visit(text, noticed, { allowTrailingComma: true });
  return twice;
}
