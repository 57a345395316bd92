import { withoutIndex } from './copies.js';
import { type Path, pathOf } from './file-order.js';
import type { Mistake } from './mistake.js';
import type { ShapeMistake } from './shape-mistakes.js';

/** A file that may be wrong anywhere, as an object to be mended part by part. */
type File = Record<string, unknown>;
type Section = Record<string, unknown>;

/**
 * What is wrong in a file, so that nothing else can be judged by it: `points.tip`, `legs` (some of them), `legs.*` (whatever
 * goes by a name of one), `symmetry`.
 */
export type Doubts = ReadonlySet<string>;

/** Whether a mistake was judged by something that is in doubt, and may only follow from what is wrong there. */
export const isDoubtful = ({ by = [] }: Mistake, doubts: Doubts): boolean =>
  by.some((part) => doubts.has(part) || doubts.has(`${part.split('.')[0]}.*`));

/** Worked no times: it holds the place of a leg, so that the others keep their numbers. */
const NO_LEGS = { count: 0, legs: [] };
/** Every name of a parameter stays known, whatever is wrong with it. */
const SOME_PARAMETER = { title: '', unit: 'count', default: 1, min: 1, max: 1 };
const SOME_PLACE = [0, 0];

/**
 * A file of which parts have a wrong form, made whole enough to judge the meaning of the others: what is wrong is left
 * out, or stands in for itself.
 */
export function soundPart(json: object, wrong: readonly ShapeMistake[]): { file: File; doubts: Set<string> } {
  const file = structuredClone(json) as File;
  const doubts = new Set<string>();
  for (const section of ['parameters', 'measures', 'points', 'seats', 'smallest', 'joins']) {
    const isNeeded = section === 'parameters' || section === 'points';
    if (isObject(file[section]) || (file[section] === undefined && !isNeeded)) continue;
    file[section] = {};
    doubts.add(section);
    if (section === 'points') doubts.add('points.*');
    if (section === 'parameters' || section === 'measures') doubts.add('quantities.*');
  }
  file.smallest ??= {};
  if (!Array.isArray(file.legs)) {
    file.legs = [];
    for (const doubt of ['legs', 'legs.*']) doubts.add(doubt);
  }
  for (const mistake of wrong) mend(file, mistake, doubts);
  if (doubts.has('threads')) withoutThreads(file);
  const isCountInDoubt =
    doubts.has('parameters') || Object.values(file.parameters as Section).includes(SOME_PARAMETER);
  if (isCountInDoubt) for (const name of copied(file)) doubts.add(name);
  return { file, doubts };
}

function mend(file: File, { path, kind }: ShapeMistake, doubts: Set<string>): void {
  const [section, key, field] = path;
  const inside = file[section] as Section;
  const isWhole = path.length === 1;
  switch (section) {
    case 'parameters':
    case 'measures':
      if (isWhole || field === 'title' || (kind === 'unknown' && field !== undefined)) return;
      doubts.add(`${section}.${key}`);
      doubts.add(`quantities.${key}`);
      if (kind === 'unknown') delete inside[key];
      else inside[key] = section === 'measures' ? 0 : standIn(inside[key]);
      return;
    case 'points':
      if (isWhole) return;
      doubts.add(`points.${key}`);
      if (kind === 'unknown' && field === undefined) delete inside[key];
      else inside[key] = SOME_PLACE;
      return;
    case 'legs':
      if (isWhole) doubts.add('legs');
      else if (kind === 'unknown')
        delete (at(file, path.slice(0, -1)) as Section | undefined)?.[path[path.length - 1]];
      else dropLeg(file, Number(key), doubts);
      return;
    case 'seats':
    case 'joins':
    case 'smallest':
      if (isWhole) return;
      doubts.add(section);
      delete inside[key];
      return;
    case 'threads':
    case 'closing':
    case 'symmetry':
    case 'detached':
      doubts.add(section);
      delete file[section];
  }
}

/** A parameter of which something is wrong, with the unit it has: only what counts decides how many copies there are. */
function standIn(entry: unknown): object {
  const { unit } = Object(entry) as { unit?: unknown };
  return unit === 'mm' || unit === 'degree' || unit === 'share'
    ? { ...SOME_PARAMETER, unit }
    : SOME_PARAMETER;
}

function dropLeg(file: File, index: number, doubts: Set<string>): void {
  const legs = file.legs as unknown[];
  doubts.add('legs');
  for (const name of namesOfLegs([legs[index]])) doubts.add(name);
  legs[index] = NO_LEGS;
}

/** `legs.arm` of each, `legs.*` of one that has no name. */
function namesOfLegs(legs: readonly unknown[]): string[] {
  return legs.flatMap((leg) => {
    const { name, legs: inner } = Object(leg) as { name?: unknown; legs?: unknown };
    if (Array.isArray(inner)) return namesOfLegs(inner);
    return typeof name === 'string' ? `legs.${name}` : 'legs.*';
  });
}

/** Points and legs of which there are as many as a parameter says. */
function copied(file: File): string[] {
  const points = Object.entries(file.points as Section).filter(([, point]) => isObject(point));
  const legs = (file.legs as unknown[]).filter((leg) => Array.isArray(Object(leg).legs));
  return [...points.map(([name]) => `points.${name}`), ...namesOfLegs(legs)];
}

function withoutThreads(file: File): void {
  const without = (leg: unknown): unknown => {
    if (!isObject(leg)) return leg;
    const { thread: _, ...rest } = leg;
    return Array.isArray(rest.legs) ? { ...rest, legs: rest.legs.map(without) } : rest;
  };
  file.legs = (file.legs as unknown[]).map(without);
}

/** What cannot be judged by what is wrong in meaning: legs, and things of which it is not known how many there are. */
export function doubtsAfter(file: File, mistakes: readonly Mistake[]): string[] {
  return mistakes.flatMap(({ place }) => {
    const [section, key] = pathOf(place, file);
    if (section === 'legs' && key !== undefined) return namesOfLegs([(file.legs as unknown[])[Number(key)]]);
    return section === 'points' && place.endsWith('.count') ? [`points.${key}`] : [];
  });
}

/**
 * A file without the legs and seats that are wrong in meaning or stand on points that are, so that what is left can be
 * built; null where all of it stands on what is wrong.
 */
export function buildablePart(
  file: File,
  wrong: readonly Mistake[],
  known: Doubts,
): { file: File; doubts: Doubts } | null {
  const stands = ['parameters', 'measures', 'symmetry'];
  if ([...known].some((doubt) => stands.includes(doubt.split('.')[0]) || doubt === 'points')) return null;
  const doubts = new Set(known);
  const rest: File = { ...file, legs: [...(file.legs as unknown[])], seats: { ...(file.seats as Section) } };
  for (const { place } of wrong) {
    const [section, key] = pathOf(place, file);
    if (section === undefined || stands.includes(String(section))) return null;
    if (section === 'legs') dropLeg(rest, Number(key), doubts);
    else if (section === 'points') doubts.add(`points.${key}`);
    else if (section === 'seats') delete (rest.seats as Section)[key];
    else if (section === 'joins' || section === 'closing') doubts.add(String(section));
  }
  rest.points = { ...(file.points as Section) };
  for (const doubt of doubts) {
    const [, name] = /^points\.(.*)/s.exec(doubt) ?? [];
    if (name === undefined || !Object.hasOwn(rest.points as Section, name)) continue;
    (rest.points as Section)[name] = SOME_PLACE;
    (rest.legs as unknown[]).forEach((leg, i) => {
      if (speaksOf(leg, name)) dropLeg(rest, i, doubts);
    });
    for (const [seat, at] of Object.entries(rest.seats as Section)) {
      if (speaksOf(at, name)) delete (rest.seats as Section)[seat];
    }
  }
  // what holds units together may be among what was left out
  if (doubts.has('legs') || doubts.has('joins')) Object.assign(rest, { joins: {}, closing: [] });
  if (doubts.has('joins')) doubts.add('legs');
  if (doubts.has('closing')) rest.closing = [];
  return { file: rest, doubts };
}

function speaksOf(value: unknown, name: string): boolean {
  if (typeof value === 'string') return withoutIndex(value) === name;
  return (
    typeof value === 'object' && value !== null && Object.values(value).some((part) => speaksOf(part, name))
  );
}

const at = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>((inner, key) => (Object(inner) as Section)[key], value);

const isObject = (value: unknown): value is Section =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
