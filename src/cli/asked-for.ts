import { readFileSync } from 'node:fs';
import type { Dressing } from '../formats/dressing.js';
import type { SavedTreatment } from '../formats/treatment.js';
import { type InputError, InputErrors } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { findIfNamed, findNamed, plainName } from '../stitches/find-named.js';
import type { Ornament, Stitch } from '../stitches/stitch.js';
import { type BrokenFile, type LoadedDictionary, type Shelf, shelves } from './dictionary.js';
import { decodeText, readInput } from './input-file.js';

type Entry<S extends Shelf> = { stitches: Stitch; ornaments: Ornament; treatments: SavedTreatment }[S];
const entriesOn = <S extends Shelf>(dictionary: Dictionary, shelf: S) =>
  dictionary[shelf] as unknown as ReadonlyMap<string, Entry<S>>;

const kinds = { stitches: 'stitch', ornaments: 'ornament', treatments: 'treatment' } as const;

/**
 * An entry of one shelf by a name that the maker gave.
 * @throws InputErrors with every mistake of a file of her own that goes by that name and could not be read: a built-in
 * entry of its name is not what she asks for. InputError with the nearest name where nothing goes by it
 */
export async function askedOn<S extends Shelf>(
  dictionary: LoadedDictionary,
  shelf: S,
  wanted: string,
): Promise<Entry<S>> {
  const found = await soundOn(dictionary, shelf, wanted);
  if (found) return found;
  await refuseBroken(brokenCalled(dictionary, [shelf], wanted));
  return findNamed(entriesOn(dictionary, shelf), wanted, kinds[shelf]);
}

/** What the maker asks for by name, on whichever shelf it is: stitches come first, then ornaments. Throws as `askedOn`. */
export async function askedFor(dictionary: LoadedDictionary, wanted: string): Promise<Dictionary> {
  const none: Dictionary = { stitches: new Map(), ornaments: new Map(), treatments: new Map() };
  for (const shelf of shelves) {
    const found = await soundOn(dictionary, shelf, wanted);
    if (found) return { ...none, [shelf]: new Map([[found.name, found]]) };
  }
  await refuseBroken(brokenCalled(dictionary, shelves, wanted));
  const stitch = findNamed(dictionary.stitches, wanted, 'stitch');
  return { ...none, stitches: new Map([[stitch.name, stitch]]) };
}

/**
 * Refuses work that asks for files of the maker's own that could not be read.
 * @throws InputErrors with every mistake of the first of them
 */
export async function refuseBrokenWork(
  dictionary: LoadedDictionary,
  { treatments, ornaments = [] }: Pick<Dressing, 'treatments' | 'ornaments'>,
): Promise<void> {
  if (dictionary.broken.length === 0) return;
  const stitches = treatments.flatMap(({ rows }) => rows.map(({ stitch }) => stitch));
  const accents = treatments.flatMap(({ accents = [] }) => accents.flatMap(({ ornament }) => ornament ?? []));
  for (const name of new Set(stitches)) await soundOn(dictionary, 'stitches', name);
  const figures = [...accents, ...ornaments.map(({ ornament }) => ornament)];
  for (const name of new Set(figures)) await soundOn(dictionary, 'ornaments', name);
}

/** Undefined where nothing on the shelf goes by the name; refuses when a broken file is meant. */
async function soundOn<S extends Shelf>(
  dictionary: LoadedDictionary,
  shelf: S,
  wanted: string,
): Promise<Entry<S> | undefined> {
  const { broken, personal } = dictionary;
  const found = findIfNamed(entriesOn(dictionary, shelf), wanted);
  const alike = broken.filter((file) => file.shelf === shelf && plainName(file.name) === plainName(wanted));
  const isFoundHers = found && personal[shelf].has(found.name) && plainName(found.name) === plainName(wanted);
  await refuseBroken(alike.find(({ name }) => name === wanted) ?? (isFoundHers ? undefined : alike[0]));
  return found;
}

/** A broken file that goes by a title or another name, as far as it can be read. */
const brokenCalled = (
  { broken }: LoadedDictionary,
  on: readonly Shelf[],
  wanted: string,
): BrokenFile | undefined =>
  broken.find(
    (file) =>
      on.includes(file.shelf) && calls(file.path).some((name) => plainName(name) === plainName(wanted)),
  );

function calls(path: string): string[] {
  try {
    const { title, otherNames } = JSON.parse(decodeText(readFileSync(path)).replace(/^\uFEFF/, ''));
    return [title, ...(Array.isArray(otherNames) ? otherNames : [])].filter(
      (name) => typeof name === 'string',
    );
  } catch {
    return [];
  }
}

async function refuseBroken(file: BrokenFile | undefined): Promise<void> {
  if (file) throw new InputErrors(await everyMistake(file));
}

async function everyMistake({ shelf, path, error }: BrokenFile): Promise<readonly InputError[]> {
  if (error.code === 'names-alike') return [error];
  try {
    const text = decodeText(await readInput(path), path);
    const { checkOrnamentFile, checkStitchFile } = await import('../stitches/check.js');
    const { checkTreatmentFile } = await import('../formats/treatment-file.js');
    const check = { stitches: checkStitchFile, ornaments: checkOrnamentFile, treatments: checkTreatmentFile }[
      shelf
    ];
    const found = await check(text, path);
    return found.length ? found : [error];
  } catch {
    return [error];
  }
}
