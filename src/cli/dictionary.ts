import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseTreatment } from '../formats/treatment.js';
import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { LazyShelf } from '../stitches/lazy-shelf.js';
import { parseOrnament, parseStitch } from '../stitches/parse.js';
import { meaning } from './complain.js';
import { decodeText, readInput } from './input-file.js';

/** The package's own folder: two up from src/cli as from dist/cli. */
export const packageFolder = fileURLToPath(new URL('../../', import.meta.url));
const BUILT_IN = join(packageFolder, 'motifs');

export const shelves = ['stitches', 'ornaments', 'treatments'] as const;
export type Shelf = (typeof shelves)[number];

/** The built-in dictionary and a maker's own, which stands before it. */
export interface LoadedDictionary extends Dictionary {
  /** the maker's own library, whether it is there or not */
  readonly personalFolder: string;
  /** names that come from there, shelf by shelf */
  readonly personal: Readonly<Record<Shelf, ReadonlySet<string>>>;
  /** names that both have */
  readonly hidden: Readonly<Record<Shelf, readonly string[]>>;
  /** files of the maker's own that could not be read, each with its first mistake; the others are there all the same */
  readonly unread: readonly InputError[];
}

/** Where a maker's own library is: as asked, else by the environment, else the platform's folder for configurations. */
export async function personalFolder(asked?: string): Promise<string> {
  const named = asked ?? process.env.SEAMWRIGHT_LIBRARY;
  if (named) return named;
  const { default: envPaths } = await import('env-paths');
  return join(envPaths('seamwright', { suffix: '' }).config, 'library');
}

/**
 * Loads both dictionaries. Built-in files are known to be sound and are read when they are first asked for; a maker's
 * own are checked, every one.
 * @param isThere whether a folder that is asked for must be there; not when something is about to be saved in it
 * @throws InputError when a folder was asked for that is not there
 */
export async function loadDictionary(asked?: string, isThere = true): Promise<LoadedDictionary> {
  const folder = await personalFolder(asked);
  if (isThere && asked !== undefined && !existsSync(asked)) {
    throw new InputError(
      'no-such-folder',
      `--library ${asked}`,
      'there is no such folder',
      'make it, or leave it away',
    );
  }
  if (existsSync(folder) && !statSync(folder).isDirectory()) {
    throw new InputError(
      'not-a-folder',
      asked === undefined ? folder : `--library ${folder}`,
      'is no folder',
      'a library is a folder with folders of stitches, ornaments and treatments',
    );
  }
  const own = { stitches: new Map(), ornaments: new Map(), treatments: new Map() };
  const unread: InputError[] = [];
  for (const { shelf, name, path } of ownFiles(folder, unread)) {
    try {
      own[shelf].set(name, await readOwn(shelf, decodeText(await readInput(path), path), name, path));
    } catch (error) {
      unread.push(notReadable(path, error as Error));
    }
  }
  const both = <T>(shelf: Shelf, mine: ReadonlyMap<string, T>, parse: (text: string, name: string) => T) => {
    const files = new Map(filesOn(BUILT_IN, shelf).map(({ name, path }) => [name, path]));
    return new LazyShelf<T>(
      [...mine.keys(), ...files.keys()],
      (name) => mine.get(name) ?? parse(readFileSync(files.get(name)!, 'utf8'), name),
    );
  };
  const namesOn = (shelf: Shelf) => filesOn(BUILT_IN, shelf).map(({ name }) => name);
  return {
    stitches: both('stitches', own.stitches, parseStitch),
    ornaments: both('ornaments', own.ornaments, parseOrnament),
    treatments: both('treatments', own.treatments, parseTreatment),
    personalFolder: folder,
    personal: eachShelf((shelf) => new Set(own[shelf].keys())),
    hidden: eachShelf((shelf) => namesOn(shelf).filter((name) => own[shelf].has(name))),
    unread,
  };
}

async function readOwn(shelf: Shelf, text: string, name: string, path: string): Promise<unknown> {
  if (shelf === 'treatments') {
    const { readTreatment } = await import('../formats/treatment-file.js');
    return readTreatment(text, name, path);
  }
  const { readOrnament, readStitch } = await import('../stitches/check.js');
  return shelf === 'stitches' ? readStitch(text, name, path) : readOrnament(text, name, path);
}

/** The file of a built-in entry. */
export const builtInFile = (shelf: Shelf, name: string): string => join(BUILT_IN, shelf, `${name}.json`);

/** All files of a maker's own library; a shelf that cannot be read is added to `unread`, and hides no other. */
export function ownFiles(
  folder: string,
  unread: InputError[],
): { shelf: Shelf; name: string; path: string }[] {
  return shelves.flatMap((shelf) => {
    try {
      return filesOn(folder, shelf).map((file) => ({ shelf, ...file }));
    } catch (error) {
      unread.push(notReadable(join(folder, shelf), error as Error));
      return [];
    }
  });
}

/** The files on a shelf, by name, hidden ones aside; none where the folder is missing. */
function filesOn(folder: string, shelf: Shelf): { name: string; path: string }[] {
  const place = join(folder, shelf);
  if (!existsSync(place)) return [];
  return readdirSync(place)
    .filter((file) => file.endsWith('.json') && !file.startsWith('.'))
    .sort()
    .map((file) => ({ name: file.replace(/\.json$/, ''), path: join(place, file) }));
}

function eachShelf<T>(make: (shelf: Shelf) => T): Record<Shelf, T> {
  return { stitches: make('stitches'), ornaments: make('ornaments'), treatments: make('treatments') };
}

/** Why a file or folder could not be read, in our words. */
export function notReadable(path: string, error: Error): InputError {
  if (error instanceof InputError) return error;
  const { code = '' } = error as NodeJS.ErrnoException;
  const [wrong, right = 'check it and its permissions'] = (meaning[code] ?? error.message).split('; ');
  return new InputError('unreadable-file', path, wrong, right);
}
