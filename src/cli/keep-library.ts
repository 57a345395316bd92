import { existsSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { readDressing } from '../formats/dressing-file.js';
import { workInOrder } from '../formats/dressing-text.js';
import { laidOutJson } from '../formats/json-text.js';
import { TREATMENT_FORMAT } from '../formats/treatment.js';
import { InputError } from '../input-error.js';
import { plainName } from '../stitches/find-named.js';
import { stitchFromDrawing } from '../stitches/from-drawing.js';
import { askedFor } from './asked-for.js';
import {
  builtInFile,
  type LoadedDictionary,
  loadDictionary,
  personalFolder,
  type Shelf,
  shelves,
} from './dictionary.js';
import { decodeText, readInput } from './input-file.js';
import type { LibraryOptions } from './library-command.js';
import { writeOutputs } from './output-files.js';
import { print, printJson, sayUnread } from './print.js';

/** Names of files that every system can have; some are devices on one of them. */
const NAME = /^(?!(?:con|prn|aux|nul|com\d|lpt\d)$)[a-z0-9][a-z0-9-]{0,60}$/;

/** Copies an entry of the dictionary into the maker's own library. */
export async function copyEntry(
  wanted: string,
  newName: string | undefined,
  options: LibraryOptions,
): Promise<void> {
  const dictionary = await loadDictionary(options.library, false);
  const found = await askedFor(dictionary, wanted);
  sayUnread(dictionary.unread);
  const shelf = shelves.find((one) => found[one].size > 0)!;
  const [name] = found[shelf].keys();
  const file = fileOf(dictionary, shelf, name);
  const record = JSON.parse(decodeText(await readInput(file), file).replace(/^\uFEFF/, ''));
  // The copy stands elsewhere, so that the schema's place would be wrong.
  const { $schema: _, ...rest } = record;
  await keep(shelf, newName ?? name, rest, options);
}

/** Takes a stitch from a drawing, checks it, and keeps it. */
export async function takeStitch(drawing: string, name: string, options: LibraryOptions): Promise<void> {
  checkName(name);
  const text = decodeText(await readInput(drawing), drawing);
  const { record, notes } = await stitchFromDrawing(text, titleOf(name), drawing);
  for (const note of notes) process.stderr.write(`seamwright: ${note}\n`);
  await keep('stitches', name, record, options);
}

/** Saves what one seam of a dressing gets, with its threads. */
export async function saveTreatment(path: string, name: string, options: LibraryOptions): Promise<void> {
  checkName(name);
  const dressing = await readDressing(decodeText(await readInput(path), path), path);
  const treatment =
    options.seam === undefined
      ? dressing.treatments[0]
      : dressing.treatments.find(({ seam }) => seam.id === options.seam);
  if (!treatment) {
    const seams = dressing.treatments.map(({ seam }) => seam.id).join(', ');
    const wrong =
      options.seam === undefined ? 'it has no treatments' : `it has no treatment of seam ${options.seam}`;
    throw new InputError(
      'no-such-treatment',
      path,
      wrong,
      seams ? `its treatments are of ${seams}` : 'dress a seam first',
    );
  }
  const { rows, accents, laid, guide } = treatment;
  const record = {
    format: TREATMENT_FORMAT,
    title: titleOf(name),
    otherNames: [],
    for: `Saved from ${basename(path)}.`,
    sources: ['our own'],
    threads: dressing.threads,
    ...workInOrder({ rows, accents, laid, guide }),
  };
  await keep('treatments', name, record, options);
}

/** Writes one file of the maker's own library, whole or not at all. */
async function keep(
  shelf: Shelf,
  name: string,
  record: object,
  { library, replace, json }: LibraryOptions,
): Promise<void> {
  checkName(name);
  const folder = join(await personalFolder(library), shelf);
  const path = join(folder, `${name}.json`);
  if (existsSync(path) && !replace) {
    throw new InputError('name-taken', path, 'is there already', 'choose another name, or say --replace');
  }
  const twin = namesIn(folder).find((other) => other !== name && plainName(other) === name);
  if (twin !== undefined) {
    throw new InputError(
      'name-taken',
      join(folder, `${twin}.json`),
      `is there already, and "${name}" would be taken for it`,
      'choose another name, or rename that file',
    );
  }
  if (existsSync(path) && !statSync(path).isFile()) {
    throw new InputError('not-a-file', path, 'is no ordinary file', 'choose another name, or take it away');
  }
  mkdirSync(folder, { recursive: true });
  await writeOutputs(
    [
      {
        path,
        content: `${laidOutJson(record)}\n`,
        said: library === undefined ? path : `--library ${library}, ${path}`,
      },
    ],
    () =>
      json
        ? printJson({ shelf, name, file: path })
        : print(
            `Saved ${path}\nseamwright swatch ${name}${library ? ` --library ${library}` : ''} --out ${name}.png shows it.`,
          ),
  );
}

function checkName(name: string): void {
  if (NAME.test(name)) return;
  throw new InputError(
    'bad-name',
    `name "${name}"`,
    'is no name for a file of a library',
    'small letters, figures and hyphens, such as my-feather',
  );
}

const titleOf = (name: string): string => {
  const words = name.replaceAll('-', ' ');
  return words[0].toUpperCase() + words.slice(1);
};

/** Names of the files of a shelf; none where the folder is not there or is none. */
const namesIn = (folder: string): string[] =>
  statSync(folder, { throwIfNoEntry: false })?.isDirectory()
    ? readdirSync(folder)
        .filter((file) => file.endsWith('.json') && !file.startsWith('.'))
        .map((file) => file.replace(/\.json$/, ''))
    : [];

/** The file that an entry of the dictionary was read from. */
export const fileOf = ({ personal }: LoadedDictionary, shelf: Shelf, name: string): string =>
  personal[shelf].get(name) ?? builtInFile(shelf, name);
