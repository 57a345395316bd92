import { InputError } from '../input-error.js';
import { buildUnit, UnitError } from './build.js';
import { compilePlan, type Plan, parametersOf } from './compile.js';
import { type Counts, countsOf } from './copies.js';
import { eachOnce, type Mistake } from './mistake.js';
import type { Figure, Ornament, Stitch } from './stitch.js';
import type { FigureRecord, OrnamentRecord, StitchRecord } from './stitch-record.js';

/**
 * A stitch from the text (or JSON value) of a file that is known to be well formed: the built-in files are, the tests
 * see to it. Others go through `readStitch`, which checks them first.
 * @param name the file's name without its ending
 * @param where the file, for messages
 */
export function parseStitch(source: string | object, name: string, where = name): Stitch {
  const record: unknown = typeof source === 'string' ? JSON.parse(source) : source;
  const mistakes: Mistake[] = [];
  const stitch = stitchFrom(record as StitchRecord, name, mistakes);
  if (mistakes.length) throw mistakeError(where, mistakes);
  return stitch;
}

/** An ornament, as `parseStitch` reads a stitch. */
export function parseOrnament(source: string | object, name: string, where = name): Ornament {
  const record: unknown = typeof source === 'string' ? JSON.parse(source) : source;
  const mistakes: Mistake[] = [];
  const ornament = ornamentFrom(record as OrnamentRecord, name, mistakes);
  if (mistakes.length) throw mistakeError(where, mistakes);
  return ornament;
}

/** The stitch that a record of the right shape describes; what its names and arithmetic get wrong goes to `mistakes`. */
export const stitchFrom = (record: StitchRecord, name: string, mistakes: Mistake[]): Stitch => ({
  ...figureFrom(record, name, mistakes),
  symmetry: record.symmetry,
  halves: record.halves,
  corner: record.corner,
  growth: record.growth,
  smallest: record.smallest,
  detached: record.detached ?? false,
});

export const ornamentFrom = (record: OrnamentRecord, name: string, mistakes: Mistake[]): Ornament => ({
  ...figureFrom(record, name, mistakes),
  smallest: record.smallest,
});

function figureFrom(record: FigureRecord, name: string, mistakes: Mistake[]): Figure {
  const parameters = parametersOf(record);
  // One plan for each choice of how many petals, spokes or arms there are.
  const plans = new Map<string, Plan>();
  const planFor = (counts: Counts, found: Mistake[]): Plan => {
    const key = [...counts.values()].join();
    const known = plans.get(key);
    if (known) return known;
    const plan = compilePlan(name, record, counts, found);
    if (found.length === 0) plans.set(key, plan);
    return plan;
  };
  planFor(countsOf(parameters, {}), mistakes);
  return {
    name,
    title: record.title,
    otherNames: record.otherNames,
    family: record.family,
    use: record.for,
    parameters,
    threads: record.threads ?? [''],
    build: (values) => {
      const found: Mistake[] = [];
      const plan = planFor(countsOf(parameters, values), found);
      if (found.length) throw new UnitError(name, found);
      return buildUnit(plan, values);
    },
  };
}

/** The first mistake as an error, with the number of the others. */
export function mistakeError(where: string, mistakes: readonly Mistake[]): InputError {
  const [{ place, wrong, right }, ...others] = eachOnce(mistakes);
  const more = others.length
    ? ` (and ${others.length} more mistake${others.length > 1 ? 's' : ''} in this file)`
    : '';
  return new InputError('stitch-file', place ? `${where} ${place}` : where, wrong, `${right}${more}`);
}
