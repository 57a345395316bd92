import { dictionaryJson } from '../formats/dictionary-json.js';
import { newerFile } from '../formats/newer-file.js';
import { InputError } from '../input-error.js';
import { reservedNames } from './expression.js';
import { type Kind, ornamentKind, stitchKind } from './kinds.js';
import { eachOnce, type Mistake } from './mistake.js';
import { mistakeError } from './parse.js';
import { shapeMistakes } from './shape-mistakes.js';
import type { Figure, Ornament, Stitch } from './stitch.js';
import type { FigureRecord } from './stitch-record.js';
import { unitMistakes } from './unit-mistakes.js';

/**
 * A stitch from a file that nobody has checked: a maker's own. Slower to load than `parseStitch`, because it brings in
 * the schema library.
 * @throws InputError with the first mistake and the number of the others
 */
export async function readStitch(source: string | object, name: string, where = name): Promise<Stitch> {
  return sound(await examine(stitchKind, source, name, where), where);
}

/** An ornament, as `readStitch` reads a stitch. */
export async function readOrnament(source: string | object, name: string, where = name): Promise<Ornament> {
  return sound(await examine(ornamentKind, source, name, where), where);
}

/** Everything that is wrong with a stitch file; empty when it is sound. */
export async function checkStitchFile(source: string | object, where: string): Promise<InputError[]> {
  return errorsOf(stitchKind, source, where);
}

/** Everything that is wrong with an ornament file; empty when it is sound. */
export async function checkOrnamentFile(source: string | object, where: string): Promise<InputError[]> {
  return errorsOf(ornamentKind, source, where);
}

interface Examined<F> {
  readonly figure: F | null;
  readonly mistakes: readonly Mistake[];
}

function sound<F>({ figure, mistakes }: Examined<F>, where: string): F {
  if (!figure || mistakes.length) throw mistakeError(where, mistakes);
  return figure;
}

async function errorsOf<R extends FigureRecord, F extends Figure>(
  kind: Kind<R, F>,
  source: string | object,
  where: string,
): Promise<InputError[]> {
  try {
    const { mistakes } = await examine(kind, source, where, where);
    return mistakes.map((mistake) => mistakeError(where, [mistake]));
  } catch (error) {
    if (error instanceof InputError) return [error];
    throw error;
  }
}

/** Form first, then meaning, then the units it builds: each is only looked at when what it stands on is sound. */
async function examine<R extends FigureRecord, F extends Figure>(
  kind: Kind<R, F>,
  source: string | object,
  name: string,
  where: string,
): Promise<Examined<F>> {
  const json = typeof source === 'string' ? await dictionaryJson(source, where) : source;
  const { format } = Object(json) as { format?: unknown };
  if (typeof format === 'number' && format > FORMAT) throw newerFile(where, format, FORMAT);
  const mistakes = await shapeMistakes(json, kind.schemas);
  if (mistakes.length) return { figure: null, mistakes };
  const record = json as R;
  mistakes.push(...parameterMistakes(record, kind.sizes), ...nameMistakes(record));
  const figure = kind.from(record, name, mistakes);
  if (!mistakes.length) mistakes.push(...unitMistakes(figure, kind.mistakesOf));
  return { figure, mistakes: eachOnce(mistakes) };
}

/** The format of stitch and ornament files that is read here. */
const FORMAT = 1;

function parameterMistakes(record: FigureRecord, sizes: readonly string[]): Mistake[] {
  const mistakes: Mistake[] = [];
  const { parameters } = record;
  const smallest = (record as FigureRecord & { smallest: Readonly<Record<string, number>> }).smallest;
  for (const key of sizes) {
    const place = `parameters.${key}`;
    if (!Object.hasOwn(parameters, key))
      mistakes.push({ place, wrong: 'it is missing', right: 'every file of this kind has one' });
    else if (parameters[key].unit !== 'mm' || parameters[key].min <= 0) {
      mistakes.push({ place, wrong: 'it is no length above 0', right: '"unit": "mm" and a "min" above 0' });
    } else if (smallest[key] > parameters[key].default) {
      mistakes.push({
        place: `smallest.${key}`,
        wrong: `${smallest[key]} is more than the default`,
        right: `at most ${parameters[key].default}`,
      });
    }
  }
  for (const [key, { min, max, default: usual }] of Object.entries(parameters)) {
    if (min <= usual && usual <= max) continue;
    mistakes.push({
      place: `parameters.${key}`,
      wrong: `default ${usual} is not between min ${min} and max ${max}`,
      right: 'min, default and max in rising order',
    });
  }
  return mistakes;
}

function nameMistakes({ parameters, measures, legs }: FigureRecord): Mistake[] {
  const mistakes: Mistake[] = [];
  const taken = new Set(reservedNames);
  for (const [kind, names] of Object.entries({ parameters, measures: measures ?? {} })) {
    for (const name of Object.keys(names)) {
      if (taken.has(name)) {
        mistakes.push({ place: `${kind}.${name}`, wrong: 'the name is taken', right: 'a name of its own' });
      }
      taken.add(name);
    }
  }
  const seen = new Set<string>();
  legs.forEach((entry, i) => {
    for (const { name } of 'legs' in entry ? entry.legs : [entry]) {
      if (seen.has(name)) {
        const place = `legs[${i}]`;
        mistakes.push({ place, wrong: `another leg is named "${name}"`, right: 'a name of its own' });
      }
      seen.add(name);
    }
  });
  return mistakes;
}
