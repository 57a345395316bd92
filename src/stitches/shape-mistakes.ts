import type { TObject, TSchema } from '@sinclair/typebox';
import { distance } from 'fastest-levenshtein';
import type { Path } from './file-order.js';
import type { Mistake } from './mistake.js';
import { nearestName } from './nearest-name.js';
import { figureSchemas } from './schema.js';
import type { LegKind } from './stitch.js';

/** A word that differs from another in more signs is no slip of the hand. */
const MISSPELLED = 3;

/** What does not have the form it should have. */
export interface ShapeMistake extends Mistake {
  /** where it stands in the file, or would stand */
  readonly path: Path;
  /** it has a name that is not known there, is not there, or is something else than it should be */
  readonly kind: 'unknown' | 'missing' | 'other';
}

/** What in a parsed file does not have the form of a stitch or ornament file: every mistake, each once. */
export async function shapeMistakes(json: object, kind: 'stitch' | 'ornament'): Promise<ShapeMistake[]> {
  const [{ Value }, schemas] = await Promise.all([import('@sinclair/typebox/value'), figureSchemas()]);
  const mistakes: ShapeMistake[] = [];

  const collect = (schema: TObject, value: unknown, prefix: Path) => {
    const seen = new Set<string>();
    for (const error of Value.Errors(schema, value)) {
      // A missing property is reported again for the type it does not have.
      if (seen.has(error.path)) continue;
      seen.add(error.path);
      const inside = keysOf(error.path);
      const path = pathOf(prefix, inside);
      const place = placeOf(path);
      const description = error.schema.description as string | undefined;
      if (error.message === 'Unexpected property') {
        for (const key of unknownNames(error.schema, value, inside)) {
          const at = pathOf(prefix, [...inside.slice(0, -1), key]);
          const said = unexpected(error.schema, key, mistakes.length > MANY);
          mistakes.push({ path: at, kind: 'unknown', place: placeOf(at), ...said });
        }
      } else if (holdsTooMany(error)) {
        const { maxItems, maxProperties } = error.schema;
        const wrong = `it holds ${Object.keys(error.value as object).length}`;
        mistakes.push({ path, kind: 'other', place, wrong, right: `at most ${maxItems ?? maxProperties}` });
      } else {
        mistakes.push({
          path,
          kind: error.value === undefined ? 'missing' : 'other',
          place,
          wrong: error.value === undefined ? 'it is missing' : `it is ${shown(error.value)}`,
          right: description ?? plainExpectation(error.message),
        });
      }
    }
  };

  const collectLegs = (legs: unknown, prefix: Path) => {
    if (!Array.isArray(legs)) return;
    legs.forEach((leg, i) => {
      const place = [...prefix, i];
      if (prefix.length === 1 && leg?.legs !== undefined) {
        collect(schemas.copiedLegs, leg, place);
        collectLegs(leg.legs, [...place, 'legs']);
      } else {
        const kind: unknown = leg?.kind;
        const known = typeof kind === 'string' && Object.hasOwn(schemas.legs, kind);
        collect(known ? schemas.legs[kind as LegKind] : schemas.anyLeg, leg, place);
      }
    });
  };
  collect(schemas[kind].frame, json, []);
  collectLegs((json as { legs?: unknown }).legs, ['legs']);
  return mistakes;
}

/** The keys of a JSON pointer (RFC 6901). */
const keysOf = (pointer: string): string[] =>
  pointer
    .split('/')
    .slice(1)
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));

const placeOf = (path: Path): string =>
  path.map((key, i) => (typeof key === 'number' ? `[${key}]` : i === 0 ? key : `.${key}`)).join('');

const holdsTooMany = ({ schema, value }: { schema: TSchema; value: unknown }): boolean =>
  typeof value === 'object' &&
  value !== null &&
  Object.keys(value).length > (schema.maxItems ?? schema.maxProperties ?? Number.POSITIVE_INFINITY);

/** Of more unknown names nobody is told what each may have meant: to find that out takes its time. */
const MANY = 200;

const pathOf = (prefix: Path, keys: readonly string[]): Path => [
  ...prefix,
  ...keys.map((key) => (/^\d+$/.test(key) ? Number(key) : key)),
];

/** Names that are not known in the object that one of them stands in: the schema library tells the first that has no fitting form. */
function unknownNames(schema: TSchema, value: unknown, keys: readonly string[]): string[] {
  const last = keys[keys.length - 1];
  if (schema.patternProperties === undefined) return [last];
  const forms = Object.keys(schema.patternProperties).map((pattern) => new RegExp(pattern));
  const object = keys.slice(0, -1).reduce<unknown>((at, key) => Object(at)[key], value);
  return Object.keys(Object(object)).filter((name) => !forms.some((form) => form.test(name)));
}

/** @param schema of the object that the name stands in */
function unexpected(schema: TSchema, key: string, isOneOfMany: boolean): Pick<Mistake, 'wrong' | 'right'> {
  const wrong = `"${key}" is not known here`;
  const known = Object.keys(schema.properties ?? {});
  if (known.length) {
    const near = isOneOfMany ? null : nearestName(key, known);
    const isMeant = near !== null && (distance(key, near) <= MISSPELLED || near.startsWith(key));
    return { wrong, right: `${isMeant ? `did you mean "${near}"? ` : ''}Known: ${known.join(', ')}` };
  }
  return { wrong, right: schema.description ?? 'leave it out' };
}

const plainExpectation = (message: string): string =>
  message.replace(/^Expected /, '').replace(/^\w/, (c) => c.toLowerCase());

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
