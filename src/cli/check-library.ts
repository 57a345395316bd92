import { statSync } from 'node:fs';
import { basename } from 'node:path';
import { ornamentFaults, type SanityFault, stitchFaults } from '../check/figure-sanity.js';
import { CREST } from '../fit/rows.js';
import { checkTreatmentFile } from '../formats/treatment-file.js';
import type { InputError } from '../input-error.js';
import { counted } from '../report/table.js';
import { checkOrnamentFile, checkStitchFile } from '../stitches/check.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { plainName } from '../stitches/find-named.js';
import { parseOrnament, parseStitch } from '../stitches/parse.js';
import { treatmentMistakes } from '../stitches/treatment-mistakes.js';
import { askedFor } from './asked-for.js';
import {
  type LoadedDictionary,
  loadDictionary,
  notReadable,
  type OwnFile,
  ownFiles,
  type Shelf,
  shelves,
} from './dictionary.js';
import { decodeText, readInput } from './input-file.js';
import { fileOf } from './keep-library.js';
import type { LibraryOptions } from './library-command.js';
import { print, printJson } from './print.js';

interface Checked {
  readonly file: string;
  readonly mistakes: readonly string[];
  /** worth knowing, and no mistake */
  readonly notes?: readonly string[];
}

/** Checks files, or everything the maker has, and tells every mistake; status 1 when there are any. */
export async function checkLibrary(names: readonly string[], options: LibraryOptions): Promise<void> {
  const dictionary = await loadDictionary(options.library);
  const unread: InputError[] = [];
  const own = ownFiles(dictionary.personalFolder, unread);
  const files = names.length ? await Promise.all(names.map((name) => fileNamed(name, own, dictionary))) : own;
  const checked: Checked[] = names.length
    ? []
    : unread.map(({ where, message }) => ({ file: where, mistakes: [message] }));
  for (const { shelf, path } of files) {
    try {
      const { mistakes, ...rest } = await check(path, shelf, dictionary);
      const twin = dictionary.broken.find((file) => file.path === path && file.error.code === 'names-alike');
      checked.push({ ...rest, mistakes: twin ? [twin.error.message, ...mistakes] : mistakes });
    } catch (error) {
      // What was named and cannot be read is a mistake in the command; what lies in the library hides no other.
      if (shelf === null) throw error;
      checked.push({ file: path, mistakes: [notReadable(path, error as Error).message] });
    }
  }
  const wrong = checked.filter(({ mistakes }) => mistakes.length > 0);
  await (options.json ? printJson({ files: checked }) : print(report(checked, dictionary.personalFolder)));
  if (wrong.length) process.exitCode = 1;
}

async function fileNamed(
  name: string,
  own: readonly OwnFile[],
  dictionary: LoadedDictionary,
): Promise<{ shelf: Shelf | null; path: string }> {
  const isFile = statSync(name, { throwIfNoEntry: false })?.isFile() ?? false;
  if (name.endsWith('.json') || isFile) return { shelf: null, path: name };
  // a file of her own is checked whether it is sound or not
  const mine =
    own.find((file) => file.name === name) ?? own.find((file) => plainName(file.name) === plainName(name));
  if (mine) return mine;
  const found = await askedFor(dictionary, name);
  const shelf = shelves.find((one) => found[one].size > 0)!;
  const [known] = found[shelf].keys();
  return { shelf, path: fileOf(dictionary, shelf, known) };
}

/** Form and meaning first; how it sews only when those are sound. */
async function check(path: string, shelf: Shelf | null, dictionary: Dictionary): Promise<Checked> {
  const text = decodeText(await readInput(path), path);
  const name = basename(path).replace(/\.json$/, '');
  const kind = shelf ?? kindOf(text);
  const told = (errors: readonly InputError[]) => errors.map(({ message }) => message);
  if (kind === 'treatments') {
    const errors = await checkTreatmentFile(text, path);
    return { file: path, mistakes: [...told(errors), ...namedMistakes(text, dictionary, path)] };
  }
  const errors = await (kind === 'stitches' ? checkStitchFile : checkOrnamentFile)(text, path);
  if (errors.length) return { file: path, mistakes: told(errors) };
  const faults =
    kind === 'stitches' ? stitchFaults(parseStitch(text, name)) : ornamentFaults(parseOrnament(text, name));
  const sewn = (wanted: SanityFault['level']) =>
    faults
      .filter(({ level }) => level === wanted)
      .map(({ what, right, at }) => `${path}: ${what} (at ${at}); ${right}`);
  return { file: path, mistakes: sewn('wrong'), notes: sewn('note') };
}

/** What a treatment names that the dictionary does not have; of a file that cannot be read at all nothing is known. */
function namedMistakes(text: string, dictionary: Dictionary, path: string): string[] {
  try {
    return treatmentMistakes(Object(JSON.parse(text.replace(/^\uFEFF/, ''))), dictionary, path, [CREST]);
  } catch (error) {
    if (error instanceof SyntaxError) return [];
    throw error;
  }
}

/** What a file that stands nowhere is, by what it holds. */
function kindOf(text: string): Shelf {
  try {
    const record = JSON.parse(text.replace(/^\uFEFF/, ''));
    if (record?.rows !== undefined) return 'treatments';
    if (record?.parameters?.size !== undefined && record?.joins === undefined) return 'ornaments';
  } catch {
    // whoever reads it as a stitch will say where it is no JSON
  }
  return 'stitches';
}

function report(checked: readonly Checked[], folder: string): string {
  if (checked.length === 0) return `Nothing to check: ${folder} holds no files.`;
  const lines = checked.flatMap(({ file, mistakes, notes = [] }) => [
    ...(mistakes.length ? mistakes : [`${file}: sound`]),
    ...notes.map((line) => `note: ${line}`),
  ]);
  const wrong = checked.filter(({ mistakes }) => mistakes.length > 0).length;
  return [...lines, '', `${counted(checked.length, 'file')} checked, ${wrong} with mistakes.`].join('\n');
}
