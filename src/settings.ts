import { rowsWeighing } from './asked/heaviness.js';
import { checkSeam } from './block/known-seams.js';
import type { SeamMap } from './block/seam-map.js';
import { lineName } from './finding.js';
import { referenceTo, resized, seamOf } from './fit/seam-reference.js';
import { checkValues } from './fit/sized.js';
import {
  CORNER_MANNERS,
  type Dressing,
  type Ends,
  HAND_THREADS,
  MANNERS,
  type ThreadChoice,
  type Treatment,
} from './formats/dressing.js';
import { plainNumber } from './formats/plain-number.js';
import { InputError } from './input-error.js';
import { moreThreads } from './plan.js';
import type { Dictionary } from './stitches/dictionary.js';
import { findNamed } from './stitches/find-named.js';
import type { Stitch } from './stitches/stitch.js';

/** What the maker says of one seam, in the words of the dressing: "4:side=left". */
export interface Setting {
  readonly line: number | 'outline';
  readonly what: string;
  readonly value: string;
}

/** A setting as the maker says it. */
export const settingAsSaid = ({ line, what, value }: Setting): string =>
  `--set ${line === 'outline' ? 'edge' : line}:${what}=${value}`;

const WORDS = ['stitch', 'side', 'reverse', 'ends', 'corner', 'passes', 'heavy', 'thread'];
const MOST_PASSES = 20;

/**
 * A dressing in which single seams are as the maker says. They are pinned, so that they stay when the block is mixed
 * again.
 *
 * @param map the block as drawn
 * @throws InputError when a seam is not dressed, a word is not known or a value is not possible
 */
export function withSettings(
  dressing: Dressing,
  settings: readonly Setting[],
  map: SeamMap,
  dictionary: Dictionary,
): Dressing {
  if (settings.length === 0) return dressing;
  refuseTwoWeights(settings);
  const lines = linesOf(
    dressing.treatments.map(({ seam }) => seam),
    map,
  );
  const treatments = [...dressing.treatments];
  const threads = [...dressing.threads];
  for (const setting of settings) {
    const where = settingAsSaid(setting);
    if (setting.line !== 'outline') checkSeam(map, setting.line, where);
    const t = lines.indexOf(setting.line);
    if (t < 0) {
      throw new InputError(
        'not-dressed',
        where,
        `${lineName(setting.line)} is not dressed`,
        'dress it, or leave this away',
      );
    }
    treatments[t] = { ...changed(treatments[t], setting, where, dictionary, threads), pinned: true };
  }
  return { ...dressing, treatments, threads };
}

/** Whether it says how heavy a line is. */
export const isOfWeight = ({ what }: Setting): boolean => what === 'passes' || what === 'heavy';

/** @throws InputError when one line's weight is said in two ways */
function refuseTwoWeights(settings: readonly Setting[]): void {
  const said = new Map<Setting['line'], Setting>();
  for (const setting of settings) {
    if (!isOfWeight(setting)) continue;
    const before = said.get(setting.line);
    if (before && before.what !== setting.what) {
      throw new InputError(
        'two-asks',
        settingAsSaid(setting),
        `stands beside ${settingAsSaid(before)}, which says how heavy it is too`,
        'leave one of them away',
      );
    }
    said.set(setting.line, setting);
  }
}

/** Where treatments lie on this block; null for a lost one. */
const linesOf = (references: readonly Treatment['seam'][], map: SeamMap): (number | 'outline' | null)[] =>
  resized(map, references).map((reference) => {
    const seam = seamOf(map, reference);
    return seam === null || seam === 'outline' ? seam : seam.id;
  });

function changed(
  treatment: Treatment,
  { what, value }: Setting,
  where: string,
  dictionary: Dictionary,
  threads: ThreadChoice[],
): Treatment {
  const oneOf = <Word extends string>(...words: Word[]): Word => {
    if ((words as string[]).includes(value)) return value as Word;
    throw new InputError('bad-choice', where, `'${value}' is no choice`, `choose ${words.join(', ')}`);
  };
  const [first] = treatment.rows;
  switch (what) {
    case 'side':
      return { ...treatment, side: oneOf('left', 'right') };
    case 'reverse':
      return { ...treatment, reverse: oneOf('yes', 'no') === 'yes' };
    case 'ends':
      return { ...treatment, ends: endsOf(value, where) };
    case 'corner':
      return { ...treatment, corner: oneOf(...CORNER_MANNERS) };
    case 'passes': {
      const passes = numberIn(value, where, 1, MOST_PASSES, true);
      return { ...treatment, rows: rowsWeighing(treatment.rows, { passes }) };
    }
    case 'heavy':
      return { ...treatment, rows: rowsWeighing(treatment.rows, { heavy: oneOf(...HAND_THREADS) }) };
    case 'thread': {
      const thread = threadOf(value, threads);
      return { ...treatment, rows: treatment.rows.map((row) => ({ ...row, thread })) };
    }
    case 'stitch': {
      const stitch = findNamed(dictionary.stitches, value, 'stitch');
      const row = { stitch: stitch.name, parameters: {}, thread: first.thread, ...moreThreads(stitch) };
      const weight = first.heavy ? { heavy: first.heavy } : { passes: first.passes };
      const { accents: _, laid: __, ...rest } = treatment;
      return { ...rest, rows: [{ ...row, ...weight, offset: 0 }] };
    }
    default: {
      const parameters = { [what]: sizeOf(dictionary.stitches.get(first.stitch), what, value, where) };
      const rows = treatment.rows.map((row, r) =>
        r === 0 ? { ...row, parameters: { ...row.parameters, ...parameters } } : row,
      );
      return { ...treatment, rows };
    }
  }
}

/** Alike at both ends, or what its start and its end do: "short,tuck". */
function endsOf(value: string, where: string): Ends {
  const words = value.split(',').map((word) => MANNERS.find((manner) => manner === word.trim()));
  const [start, end] = words;
  if (start && words.length === 1) return start;
  if (start && end && words.length === 2) return [start, end];
  throw new InputError(
    'bad-choice',
    where,
    `'${value}' is no choice`,
    `choose ${MANNERS.join(', ')}, or two of them for its start and its end, such as short,tuck`,
  );
}

/** A parameter of the stitch that the seam has; a stitch that is not there is told of when it is worked. */
function sizeOf(stitch: Stitch | undefined, what: string, value: string, where: string): number {
  const known = stitch?.parameters.find(({ name }) => name === what);
  if (stitch && !known) {
    const names = stitch.parameters.map(({ name }) => name);
    throw new InputError(
      'unknown-setting',
      where,
      `"${what}" is nothing that ${stitch.title.toLowerCase()} has`,
      `set ${[...WORDS, ...names].join(', ')}`,
    );
  }
  const size = numberIn(value, where, known?.min ?? -1000, known?.max ?? 1000, false);
  if (stitch) checkValues(stitch, { [what]: size });
  return size;
}

function numberIn(word: string, where: string, min: number, max: number, whole: boolean): number {
  const value = plainNumber(word);
  if (value >= min && value <= max && (!whole || Number.isInteger(value))) return value;
  const kind = whole ? 'a whole number' : 'a number';
  throw new InputError(
    'bad-number',
    where,
    `'${word}' is not possible`,
    `give ${kind} from ${min} to ${max}`,
  );
}

/** The thread of this color, '#rrggbb', which joins the others where there is none. */
function threadOf(hex: string, threads: ThreadChoice[]): number {
  const known = threads.findIndex((thread) => thread.hex.toLowerCase() === hex);
  return known >= 0 ? known : threads.push({ name: hex, hex, weight: threads[0]?.weight ?? 'No. 40' }) - 1;
}

/**
 * A dressing that leaves seams bare: they have no treatment, and get none when the block is mixed again.
 * @throws InputError for a seam that the block does not have
 */
export function withBare(dressing: Dressing, seams: readonly number[], map: SeamMap): Dressing {
  if (seams.length === 0) return dressing;
  for (const id of seams) checkSeam(map, id, `--bare ${id}`);
  const lines = linesOf(
    dressing.treatments.map(({ seam }) => seam),
    map,
  );
  const known = new Set(linesOf(dressing.bare ?? [], map));
  const more = seams.filter((id) => !known.has(id)).map((id) => referenceTo(map.seams[id - 1]));
  return {
    ...dressing,
    treatments: dressing.treatments.filter((_, t) => !seams.includes(lines[t] as number)),
    bare: [...(dressing.bare ?? []), ...more],
  };
}
