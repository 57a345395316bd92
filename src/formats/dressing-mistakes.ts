import { Kind, type TSchema } from '@sinclair/typebox';
import { Errors, type ValueError, type ValueErrorIterator, ValueErrorType } from '@sinclair/typebox/errors';
import { closest, distance } from 'fastest-levenshtein';
import type { DensityAsked } from './density-asked.js';
import {
  type Accent,
  type Guide,
  type KeepClear,
  type PlacedOrnament,
  type Row,
  STEEPEST_GUIDE,
  type Work,
} from './dressing.js';
import { type DressingRecord, dressingSchema } from './dressing-schema.js';
import { inJsonOrder, type JsonPath } from './json-order.js';
import { treatmentSchema } from './treatment-schema.js';

/** What is wrong, as a phrase that begins with its place, and the keys that lead there. */
interface Wrong {
  readonly path: JsonPath;
  readonly phrase: string;
  /** a name that is not known there: nothing else is worse for it */
  readonly isUnknownName?: boolean;
}

/** Everything that is wrong with a value as a dressing, a phrase each, in its order; empty when it is one. */
export function mistakesIn(value: unknown): string[] {
  const shape = wrongIn(Errors(dressingSchema, value));
  const parts = new SoundParts(shape);
  const { treatments, threads, ornaments, keepClear, density } = Object(value) as Record<
    keyof DressingRecord,
    unknown
  >;
  const count = countOf(threads);
  const meaning = [
    ...listed(treatments).flatMap((work, t) => workMistakes(work, count, ['treatments', t], parts)),
    ...parts
      .among<PlacedOrnament>(ornaments, ['ornaments'])
      .flatMap((one) => [
        ...threadMistakes(one, count),
        ...oneOfMistakes(one, ['at', 'patch']),
        ...oneOfMistakes(one, WEIGHT),
      ]),
    ...parts
      .among<KeepClear>(keepClear, ['keepClear'])
      .flatMap((one) => oneOfMistakes(one, ['polygon', 'circle', 'stops'])),
    ...limitMistakes(density, parts),
  ];
  return phrasesInOrder([...shape, ...meaning], value);
}

/** The parts of a value that have the form they should have: only their meaning can be looked at. */
class SoundParts {
  /** keys that lead to what is wrong, and to what it stands in */
  private readonly wrong: ReadonlySet<string>;

  constructor(wrong: readonly Wrong[]) {
    const inForm = wrong.filter(({ isUnknownName }) => !isUnknownName);
    this.wrong = new Set(
      inForm.flatMap(({ path }) => path.map((_, i) => JSON.stringify(path.slice(0, i + 1)))),
    );
  }

  isSound(path: JsonPath): boolean {
    return !this.wrong.has(JSON.stringify(path.map(String)));
  }

  /** Sound items of a list, each with the keys that lead to it. */
  among<T>(list: unknown, path: JsonPath): { path: JsonPath; value: T }[] {
    return listed(list)
      .map((value, i) => ({ path: [...path, i], value: value as T }))
      .filter((item) => this.isSound(item.path));
  }
}

const listed = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);
/** How many a list holds; of what is no list nothing can be said. */
const countOf = (value: unknown): number => (Array.isArray(value) ? value.length : Number.POSITIVE_INFINITY);

/** What a schema cannot say: threads and rows that are named exist, and an accent is something. */
function workMistakes(work: unknown, threads: number, path: JsonPath, parts: SoundParts): Wrong[] {
  const { rows, accents, laid, guide } = Object(work) as Record<keyof Work, unknown>;
  const soundAccents = parts.among<Accent>(accents, [...path, 'accents']);
  const [laidPath, guidePath] = [
    [...path, 'laid'],
    [...path, 'guide'],
  ];
  return [
    ...parts
      .among<Row>(rows, [...path, 'rows'])
      .flatMap((row) => [...threadMistakes(row, threads), ...oneOfMistakes(row, WEIGHT)]),
    ...soundAccents.flatMap((accent) => [
      ...threadMistakes(accent, threads),
      ...oneOfMistakes(accent, WEIGHT),
      ...accentMistakes(accent, countOf(rows)),
    ]),
    ...(laid && parts.isSound(laidPath)
      ? threadMistakes({ path: laidPath, value: laid as Threaded }, threads)
      : []),
    ...(guide && parts.isSound(guidePath) ? guideMistakes({ path: guidePath, value: guide as Guide }) : []),
  ];
}

/** Of two limits the lower one comes first. */
function limitMistakes(density: unknown, parts: SoundParts): Wrong[] {
  const limits = Object(density) as DensityAsked;
  return (['holes', 'layers', 'inOneHole'] as const).flatMap((measure): Wrong[] => {
    const path = ['density', measure];
    const limit = limits[measure];
    if (!limit || !parts.isSound(path) || limit[0] <= limit[1]) return [];
    return [{ path, phrase: `${spokenKeys(path)} is [${limit.join(', ')}], not the lower one first` }];
  });
}

function guideMistakes({ path, value }: { path: JsonPath; value: Guide }): Wrong[] {
  const { height, length } = value;
  if (height <= STEEPEST_GUIDE * length) return [];
  const at = [...path, 'height'];
  const phrase = `${spokenKeys(at)} is ${height}, but no thread follows so steep a line: ${STEEPEST_GUIDE * length} at most`;
  return [{ path: at, phrase }];
}

function accentMistakes({ path, value }: { path: JsonPath; value: Accent }, rows: number): Wrong[] {
  const { row, ornament, byHand } = value;
  const wrong: Wrong[] = [];
  const place = spokenKeys(path);
  if (row >= rows) {
    const phrase = `${place}.row is ${row}, but rows has ${rows} in it, counted from 0`;
    wrong.push({ path: [...path, 'row'], phrase });
  }
  if (ornament === null && !byHand)
    wrong.push({ path, phrase: `${place} has neither an ornament nor byHand` });
  if (ornament !== null && byHand) wrong.push({ path, phrase: `${place} has both an ornament and byHand` });
  return wrong;
}

const WEIGHT: (keyof Row & keyof Accent)[] = ['passes', 'heavy'];

/** Several keys say the same, and exactly one of them must be there. */
function oneOfMistakes<T>(
  { path, value }: { path: JsonPath; value: T },
  keys: (keyof T & string)[],
): Wrong[] {
  const said = keys.filter((key) => value[key] !== undefined);
  if (said.length === 1) return [];
  const phrase = said.length
    ? `${spokenKeys(path)} has ${said.join(' and ')}, but only one of them may be there`
    : `${spokenKeys(path)} has none of ${keys.join(', ')} and needs one`;
  return [{ path, phrase }];
}

interface Threaded {
  readonly thread: number;
  readonly moreThreads?: readonly number[];
}

function threadMistakes({ path, value }: { path: JsonPath; value: Threaded }, threads: number): Wrong[] {
  const { thread, moreThreads = [] } = value;
  const named: [JsonPath, number][] = [
    [[...path, 'thread'], thread],
    ...moreThreads.map((index, k): [JsonPath, number] => [[...path, 'moreThreads', k], index]),
  ];
  return named
    .filter(([, index]) => index >= threads)
    .map(([at, index]) => ({
      path: at,
      phrase: `${spokenKeys(at)} is ${index}, but threads has ${threads} in it, counted from 0`,
    }));
}

/** Everything that is wrong with a value as the file of a saved treatment, a phrase each, in its order. */
export function mistakesInTreatment(value: unknown): string[] {
  const shape = wrongIn(Errors(treatmentSchema, value));
  const { threads } = Object(value) as { threads?: unknown };
  const meaning = workMistakes(value, countOf(threads), [], new SoundParts(shape));
  return phrasesInOrder([...shape, ...meaning], value);
}

const phrasesInOrder = (wrong: readonly Wrong[], value: unknown): string[] =>
  inJsonOrder(wrong, ({ path }) => path, value).map(({ phrase }) => phrase);

/** One phrase a place: the first that the schema finds wrong there is the plainest. */
function wrongIn(errors: ValueErrorIterator): Wrong[] {
  const told = new Map<string, Wrong>();
  for (const error of errors) {
    for (const one of inside(error)) {
      if (told.has(one.path)) continue;
      const isUnknownName = one.type === ValueErrorType.ObjectAdditionalProperties;
      told.set(one.path, { path: keysOf(one.path), phrase: phrase(one), isUnknownName });
    }
  }
  return [...told.values()];
}

/** Of a choice that fails, what fails inside the one choice that has the right outer shape, if there is one. */
function inside(error: ValueError): ValueError[] {
  if (error.type !== ValueErrorType.Union) return [error];
  for (const choice of error.errors) {
    const found = [...choice];
    if (found.every(({ path }) => path !== error.path)) return found.flatMap(inside);
  }
  return [error];
}

function phrase({ type, path, schema, value }: ValueError): string {
  const place = spokenPath(path);
  if (type === ValueErrorType.ObjectRequiredProperty) return `${place} is missing (${schema.description})`;
  if (type === ValueErrorType.ObjectAdditionalProperties)
    return `${place} is not known here${meant(path, schema)}`;
  return `${place} is ${shown(value)}, not ${schema.description}`;
}

function meant(path: string, schema: TSchema): string {
  const key = keysOf(path).at(-1) ?? '';
  const known = schema[Kind] === 'Object' ? Object.keys(schema.properties) : [];
  if (!known.length || key.length > 40) return '';
  const near = closest(key, known);
  return distance(key, near) <= 2 ? ` (did you mean ${near}?)` : '';
}

const spokenPath = (path: string): string => spokenKeys(keysOf(path));

/** "treatments[0].rows[1].thread" */
function spokenKeys(path: JsonPath): string {
  const spoken = path.map(String).map((key) => {
    if (/^\d+$/.test(key)) return `[${key}]`;
    return /^\w{1,40}$/.test(key) ? `.${key}` : `[${shown(key)}]`;
  });
  return spoken.join('').replace(/^\./, '') || 'the file';
}

/** The keys of a JSON pointer (RFC 6901). */
const keysOf = (path: string): string[] =>
  path
    .split('/')
    .slice(1)
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));

function shown(value: unknown): string {
  if (Array.isArray(value)) return value.length ? 'a list in brackets' : 'an empty list';
  if (typeof value === 'object' && value !== null) return 'an object in braces';
  if (typeof value !== 'string') return String(value);
  return JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}...` : value);
}
