import { Kind, type TSchema } from '@sinclair/typebox';
import { Errors, type ValueError, type ValueErrorIterator, ValueErrorType } from '@sinclair/typebox/errors';
import { closest, distance } from 'fastest-levenshtein';
import type { Work } from './dressing.js';
import { type DressingRecord, dressingSchema } from './dressing-schema.js';
import type { TreatmentRecord } from './treatment.js';
import { treatmentSchema } from './treatment-schema.js';

/** Everything that is wrong with a value as a dressing, a phrase each; empty when it is one. */
export function mistakesIn(value: unknown): string[] {
  const shape = phrases(Errors(dressingSchema, value));
  if (shape.length) return shape;
  const { treatments, threads, ornaments = [] } = value as DressingRecord;
  return [
    ...treatments.flatMap((treatment, t) => workMistakes(treatment, threads.length, `treatments[${t}].`)),
    ...ornaments.flatMap((ornament, k) => threadMistakes(ornament, threads.length, `ornaments[${k}]`)),
  ];
}

/** What a schema cannot say: threads and rows that are named exist, and an accent is something. */
function workMistakes({ rows, accents = [], laid }: Work, threads: number, prefix: string): string[] {
  const mistakes = [
    ...rows.flatMap((row, r) => threadMistakes(row, threads, `${prefix}rows[${r}]`)),
    ...accents.flatMap((accent, k) => threadMistakes(accent, threads, `${prefix}accents[${k}]`)),
    ...(laid ? threadMistakes(laid, threads, `${prefix}laid`) : []),
  ];
  accents.forEach(({ row, ornament, byHand }, k) => {
    const place = `${prefix}accents[${k}]`;
    if (row >= rows.length) {
      mistakes.push(`${place}.row is ${row}, but rows has ${rows.length} in it, counted from 0`);
    }
    if (ornament === null && !byHand) mistakes.push(`${place} has neither an ornament nor byHand`);
    if (ornament !== null && byHand) mistakes.push(`${place} has both an ornament and byHand`);
  });
  return mistakes;
}

interface Threaded {
  readonly thread: number;
  readonly moreThreads?: readonly number[];
}

function threadMistakes({ thread, moreThreads = [] }: Threaded, threads: number, place: string): string[] {
  const named: [string, number][] = [
    ['thread', thread],
    ...moreThreads.map((index, k): [string, number] => [`moreThreads[${k}]`, index]),
  ];
  return named
    .filter(([, index]) => index >= threads)
    .map(([key, index]) => `${place}.${key} is ${index}, but threads has ${threads} in it, counted from 0`);
}

/** Everything that is wrong with a value as the file of a saved treatment, a phrase each. */
export function mistakesInTreatment(value: unknown): string[] {
  const shape = phrases(Errors(treatmentSchema, value));
  if (shape.length) return shape;
  const { threads, ...work } = value as TreatmentRecord;
  return workMistakes(work, threads.length, '');
}

/** One phrase a place: the first that the schema finds wrong there is the plainest. */
function phrases(errors: ValueErrorIterator): string[] {
  const told = new Map<string, string>();
  for (const error of errors) {
    for (const one of inside(error)) {
      if (!told.has(one.path)) told.set(one.path, phrase(one));
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

/** "treatments[0].rows[1].thread" */
function spokenPath(path: string): string {
  const spoken = keysOf(path).map((key) => {
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
