import { placeOfJsonError } from '../formats/json-place.js';
import { InputError } from '../input-error.js';
import { LONGEST_FIT, type Mistake, SHORTEST_FIT } from './compile.js';
import { reservedNames } from './expression.js';
import { isOnePiece } from './one-piece.js';
import { mistakeError, stitchFrom } from './parse.js';
import { shapeMistakes } from './shape-mistakes.js';
import type { Stitch, Unit, Values } from './stitch.js';
import type { StitchRecord } from './stitch-record.js';

/**
 * A stitch from a file that nobody has checked: a maker's own. Slower to load than `parseStitch`, because it brings in
 * the schema library.
 * @throws InputError with the first mistake and the number of the others
 */
export async function readStitch(source: string | object, name: string, where = name): Promise<Stitch> {
  const { stitch, mistakes } = await examine(source, name, where);
  if (!stitch || mistakes.length) throw mistakeError(where, mistakes);
  return stitch;
}

/** Everything that is wrong with a stitch file; empty when it is sound. */
export async function checkStitchFile(source: string | object, where: string): Promise<InputError[]> {
  try {
    const { mistakes } = await examine(source, where, where);
    return mistakes.map((mistake) => mistakeError(where, [mistake]));
  } catch (error) {
    if (error instanceof InputError) return [error];
    throw error;
  }
}

/** Form first, then meaning, then the units it builds: each is only looked at when what it stands on is sound. */
async function examine(
  source: string | object,
  name: string,
  where: string,
): Promise<{ stitch: Stitch | null; mistakes: Mistake[] }> {
  const json = await parsedJson(source, where);
  const mistakes = await shapeMistakes(json);
  if (mistakes.length) return { stitch: null, mistakes };
  const record = json as StitchRecord;
  mistakes.push(...parameterMistakes(record), ...nameMistakes(record));
  const stitch = stitchFrom(record, name, mistakes);
  if (!mistakes.length) mistakes.push(...unitMistakes(stitch));
  return { stitch, mistakes };
}

/** Signs in a stitch file; the built-in ones have about 3,000. */
const LONGEST_FILE = 200_000;

async function parsedJson(source: string | object, where: string): Promise<unknown> {
  if (typeof source !== 'string') return source;
  if (source.length > LONGEST_FILE) {
    throw new InputError(
      'stitch-file',
      where,
      `${source.length} signs are too many`,
      `at most ${LONGEST_FILE}`,
    );
  }
  const plain = source.replace(/^\uFEFF/, '');
  try {
    return JSON.parse(plain);
  } catch {
    const { place, wrong } = await placeOfJsonError(plain);
    throw new InputError('not-json', `${where}${place}`, wrong, 'a stitch is a JSON file');
  }
}

function parameterMistakes({ parameters, smallest }: StitchRecord): Mistake[] {
  const mistakes: Mistake[] = [];
  for (const key of ['repeat', 'width'] as const) {
    const place = `parameters.${key}`;
    if (!Object.hasOwn(parameters, key))
      mistakes.push({ place, wrong: 'it is missing', right: 'every stitch has one' });
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

function nameMistakes({ parameters, measures, legs }: StitchRecord): Mistake[] {
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
  legs.forEach(({ name }, i) => {
    if (seen.has(name)) {
      mistakes.push({
        place: `legs[${i}]`,
        wrong: `another leg is named "${name}"`,
        right: 'a name of its own',
      });
    }
    seen.add(name);
  });
  return mistakes;
}

/** Shortest visible leg that is a stitch at all, in mm. */
const SHORTEST_LEG = 0.3;

/** Builds units over the ranges of the parameters and looks at each. The first mistake of a kind is enough. */
function unitMistakes(stitch: Stitch): Mistake[] {
  const mistakes = new Map<string, Mistake>();
  for (const values of sampleValues(stitch)) {
    try {
      for (const mistake of mistakesOf(stitch, stitch.build(values))) {
        const at = ` (at ${JSON.stringify(values)})`;
        if (!mistakes.has(mistake.place + mistake.right)) {
          mistakes.set(mistake.place + mistake.right, { ...mistake, wrong: mistake.wrong + at });
        }
      }
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      const place = error.where.replace(`${stitch.name} `, '');
      if (!mistakes.has(place)) mistakes.set(place, { place, wrong: error.wrong, right: error.right });
    }
  }
  return [...mistakes.values()];
}

/** The defaults, each parameter at its ends, all of them at theirs, and repeats as short and long as a fit makes them. */
function sampleValues({ parameters }: Stitch): Values[] {
  const ends = (end: 'min' | 'max') =>
    Object.fromEntries(parameters.map((parameter) => [parameter.name, parameter[end]]));
  const usual = parameters.find((parameter) => parameter.name === 'repeat')!.default;
  return [
    {},
    ...parameters.flatMap(({ name, min, max }) => [{ [name]: min }, { [name]: max }]),
    ends('min'),
    ends('max'),
    { repeat: usual * SHORTEST_FIT },
    { repeat: usual * LONGEST_FIT },
  ];
}

function* mistakesOf(stitch: Stitch, unit: Unit): Generator<Mistake> {
  for (const leg of [...unit.legs, ...unit.ending]) {
    if (leg.kind === 'knot' || leg.kind === 'under') continue;
    let long = 0;
    for (let i = 2; i < leg.path.length; i += 2) {
      long += Math.hypot(leg.path[i] - leg.path[i - 2], leg.path[i + 1] - leg.path[i - 1]);
    }
    if (long >= SHORTEST_LEG) continue;
    yield {
      place: `leg "${leg.name}"`,
      wrong: `it is ${long.toFixed(2)} mm long`,
      right: `at least ${SHORTEST_LEG} mm`,
    };
  }
  if (!isOnePiece(unit)) {
    yield {
      place: 'legs',
      wrong: 'a row of it falls into pieces',
      right: 'let legs share points, join units, or add an "under" leg between the pieces',
    };
  }
  if (stitch.symmetry === 'mirror' && !mirrorsItself(unit)) {
    yield {
      place: 'symmetry',
      wrong: 'its holes to the left and right differ',
      right: '"none", or holes that mirror',
    };
  }
}

function mirrorsItself({ nodes }: Unit): boolean {
  const near = (u: number, v: number) => {
    for (let i = 0; i < nodes.length; i += 2)
      if (Math.hypot(nodes[i] - u, nodes[i + 1] - v) < 1e-6) return true;
    return false;
  };
  for (let i = 0; i < nodes.length; i += 2) if (!near(nodes[i], -nodes[i + 1])) return false;
  return true;
}
