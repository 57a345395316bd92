import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseTreatment } from '../formats/treatment.js';
import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { plainName } from '../stitches/find-named.js';
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
  /** names that come from there, shelf by shelf, each with its file */
  readonly personal: Readonly<Record<Shelf, ReadonlyMap<string, string>>>;
  /** names that both have */
  readonly hidden: Readonly<Record<Shelf, readonly string[]>>;
  /** files of the maker's own that could not be read; the others are there all the same */
  readonly broken: readonly BrokenFile[];
  /** the first mistake of each of those, and shelves that could not be read */
  readonly unread: readonly InputError[];
}

/** A file of a maker's own library. */
export interface OwnFile {
  readonly shelf: Shelf;
  /** the file's name without the ending */
  readonly name: string;
  readonly path: string;
}

export interface BrokenFile extends OwnFile {
  readonly error: InputError;
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
  const builtIn = eachShelf(
    (shelf) => new Map(filesOn(BUILT_IN, shelf).map(({ name, path }) => [name, path])),
  );
  const own = { stitches: new Map(), ornaments: new Map(), treatments: new Map() };
  const personal = eachShelf(() => new Map<string, string>());
  const shelvesUnread: InputError[] = [];
  const broken: BrokenFile[] = [];
  for (const file of plainlyNamedFirst(ownFiles(folder, shelvesUnread))) {
    const { shelf, path } = file;
    const name = nameBeside(builtIn[shelf].keys(), file.name);
    try {
      const twin = [...personal[shelf]].find(([other]) => plainName(other) === plainName(name));
      if (twin) throw namesAlike(path, twin[1]);
      own[shelf].set(name, await readOwn(shelf, decodeText(await readInput(path), path), name, path));
      personal[shelf].set(name, path);
    } catch (error) {
      broken.push({ ...file, error: notReadable(path, error as Error) });
    }
  }
  const both = <T>(shelf: Shelf, mine: ReadonlyMap<string, T>, parse: (text: string, name: string) => T) =>
    new LazyShelf<T>(
      [...mine.keys(), ...builtIn[shelf].keys()],
      (name) => mine.get(name) ?? parse(readFileSync(builtIn[shelf].get(name)!, 'utf8'), name),
    );
  return {
    stitches: both('stitches', own.stitches, parseStitch),
    ornaments: both('ornaments', own.ornaments, parseOrnament),
    treatments: both('treatments', own.treatments, parseTreatment),
    personalFolder: folder,
    personal,
    hidden: eachShelf((shelf) => [...builtIn[shelf].keys()].filter((name) => own[shelf].has(name))),
    broken,
    unread: [...shelvesUnread, ...broken.map(({ error }) => error)],
  };
}

/** Files named as names are looked up, small letters and hyphens, before others that would be taken for the same. */
const plainlyNamedFirst = (files: readonly OwnFile[]): OwnFile[] =>
  [...files].sort((a, b) => Number(a.name !== plainName(a.name)) - Number(b.name !== plainName(b.name)));

/** What a file of one's own goes by: as the built-in entry that it stands before, where names are alike but for capitals. */
const nameBeside = (builtIn: Iterable<string>, name: string): string =>
  [...builtIn].find((known) => plainName(known) === plainName(name)) ?? name;

const namesAlike = (path: string, other: string): InputError =>
  new InputError(
    'names-alike',
    path,
    `its name is that of ${basename(other)} but for capitals or the signs between words`,
    'rename one of the two',
  );

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
export function ownFiles(folder: string, unread: InputError[]): OwnFile[] {
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
  const { code } = error as NodeJS.ErrnoException;
  if (code === undefined) {
    const wrong = `a fault of the program itself: ${error.message}`;
    return new InputError('program-fault', path, wrong, 'please report it with this file');
  }
  const [wrong, right = 'check it and its permissions'] = (meaning[code] ?? error.message).split('; ');
  return new InputError('unreadable-file', path, wrong, right);
}
