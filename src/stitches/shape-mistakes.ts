import type { TObject } from '@sinclair/typebox';
import type { Mistake } from './mistake.js';
import { nearestName } from './nearest-name.js';
import { figureSchemas } from './schema.js';
import type { LegKind } from './stitch.js';

/** What in a parsed file does not have the form of a stitch or ornament file: every mistake, each once. */
export async function shapeMistakes(json: unknown, kind: 'stitch' | 'ornament'): Promise<Mistake[]> {
  const [{ Value }, schemas] = await Promise.all([import('@sinclair/typebox/value'), figureSchemas()]);
  const mistakes: Mistake[] = [];

  const collect = (schema: TObject, value: unknown, prefix: string) => {
    const seen = new Set<string>();
    for (const error of Value.Errors(schema, value)) {
      // A missing property is reported again for the type it does not have.
      if (seen.has(error.path)) continue;
      seen.add(error.path);
      const place = prefix + placeOf(error.path, prefix !== '');
      const description = error.schema.description as string | undefined;
      if (error.message === 'Unexpected property') {
        mistakes.push({ place, ...unexpected(schema, error.path) });
      } else {
        mistakes.push({
          place,
          wrong: error.value === undefined ? 'it is missing' : `it is ${shown(error.value)}`,
          right: description ?? plainExpectation(error.message),
        });
      }
    }
  };

  const collectLegs = (legs: unknown, prefix: string) => {
    if (!Array.isArray(legs)) return;
    legs.forEach((leg, i) => {
      const place = `${prefix}[${i}]`;
      if (prefix === 'legs' && leg?.legs !== undefined) {
        collect(schemas.copiedLegs, leg, place);
        collectLegs(leg.legs, `${place}.legs`);
      } else {
        const kind: unknown = leg?.kind;
        const known = typeof kind === 'string' && Object.hasOwn(schemas.legs, kind);
        collect(known ? schemas.legs[kind as LegKind] : schemas.anyLeg, leg, place);
      }
    });
  };
  collect(schemas[kind].frame, json, '');
  collectLegs((json as { legs?: unknown } | null)?.legs, 'legs');
  return mistakes;
}

function placeOf(path: string, inside: boolean): string {
  const keys = path
    .split('/')
    .slice(1)
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
  return keys
    .map((key, i) => (/^\d+$/.test(key) ? `[${key}]` : i === 0 && !inside ? key : `.${key}`))
    .join('');
}

function unexpected(schema: TObject, path: string): Pick<Mistake, 'wrong' | 'right'> {
  const keys = path.split('/').slice(1);
  const key = keys[keys.length - 1];
  const wrong = `"${key}" is not known here`;
  let at: { properties?: Record<string, unknown>; description?: string } | undefined = schema;
  for (const step of keys.slice(0, -1)) at = at?.properties?.[step] as typeof at;
  const known = Object.keys(at?.properties ?? {});
  if (known.length)
    return { wrong, right: `did you mean "${nearestName(key, known)}"? Known: ${known.join(', ')}` };
  return { wrong, right: at?.description ?? 'leave it out' };
}

const plainExpectation = (message: string): string =>
  message.replace(/^Expected /, '').replace(/^\w/, (c) => c.toLowerCase());

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
