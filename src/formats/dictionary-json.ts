import { InputError } from '../input-error.js';
import { placeOfJsonError } from './json-place.js';

/** Signs in a file of the dictionary; the built-in ones have about 3,000. */
const LONGEST_FILE = 200_000;
/** Brackets inside brackets; files of the dictionary have 6, and what walks through a value takes a few hundred. */
const DEEPEST = 32;

/**
 * The value in the text of a stitch, an ornament or a treatment that nobody has checked.
 * @throws InputError when the text is absurdly long or deep, is no JSON, or says one name twice, of which JSON itself
 * would drop the first without a word
 */
export async function dictionaryJson(source: string, where: string): Promise<unknown> {
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
  const value = await parsed(text, where);
  const control = controlCharacterIn(value);
  if (control !== null) {
    const wrong = `${JSON.stringify(control)} has a line end or a control character in it`;
    throw new InputError('control-character', where, wrong, 'names and texts that stay on their line');
  }
  const [twice, ...more] = await namesSaidTwice(text);
  if (!twice) return value;
  const others = more.length ? ` (and ${more.length} more such names in this file)` : '';
  const wrong = `${JSON.stringify(twice.name)} is said twice in one object`;
  throw new InputError('name-twice', `${where} line ${twice.line}`, wrong, `say it once${others}`);
}

async function parsed(text: string, where: string): Promise<unknown> {
  try {
    return JSON.parse(text);
  } catch {
    const { place, wrong } = await placeOfJsonError(text);
    throw new InputError('not-json', `${where}${place}`, wrong, 'files of the dictionary are JSON');
  }
}

/** A name or text that could drive the terminal it is shown on. */
function controlCharacterIn(value: unknown): string | null {
  if (typeof value === 'string') return /\p{Cc}/u.test(value) ? value : null;
  if (typeof value !== 'object' || value === null) return null;
  for (const part of Object.entries(value).flat()) {
    const found = controlCharacterIn(part);
    if (found !== null) return found;
  }
  return null;
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

async function namesSaidTwice(text: string): Promise<{ name: string; line: number }[]> {
  const { visit } = await import('jsonc-parser');
  const open: Set<string>[] = [];
  const twice: { name: string; line: number }[] = [];
  visit(text, {
    onObjectBegin: () => {
      open.push(new Set());
    },
    onObjectEnd: () => {
      open.pop();
    },
    onObjectProperty: (name, _offset, _length, line) => {
      const names = open[open.length - 1];
      if (names.has(name)) twice.push({ name, line: line + 1 });
      names.add(name);
    },
  });
  return twice;
}
