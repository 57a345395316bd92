import { InputError } from '../input-error.js';
import { buildUnit } from './build.js';
import { compilePlan, type Mistake } from './compile.js';
import type { Stitch } from './stitch.js';
import type { StitchRecord } from './stitch-record.js';

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

/** The stitch that a record of the right shape describes; what its names and arithmetic get wrong goes to `mistakes`. */
export function stitchFrom(record: StitchRecord, name: string, mistakes: Mistake[]): Stitch {
  const plan = compilePlan(name, record, mistakes);
  return {
    name,
    title: record.title,
    otherNames: record.otherNames,
    family: record.family,
    use: record.for,
    parameters: plan.parameters,
    symmetry: record.symmetry,
    halves: record.halves,
    corner: record.corner,
    growth: record.growth,
    smallest: record.smallest,
    build: (values) => buildUnit(plan, values),
  };
}

/** The first mistake as an error, with the number of the others. */
export function mistakeError(where: string, mistakes: readonly Mistake[]): InputError {
  const [{ place, wrong, right }] = mistakes;
  const more = mistakes.length > 1 ? ` (and ${mistakes.length - 1} more mistakes in this file)` : '';
  return new InputError('stitch-file', place ? `${where} ${place}` : where, wrong, `${right}${more}`);
}
