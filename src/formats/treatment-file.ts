import { errorsIn, firstOf, InputError } from '../input-error.js';
import { dictionaryJson } from './dictionary-json.js';
import { newerFile } from './newer-file.js';
import { type SavedTreatment, TREATMENT_FORMAT, type TreatmentRecord, treatmentFrom } from './treatment.js';

/**
 * A treatment from a file that nobody has checked. Slower than `parseTreatment`, because it brings in the schema library.
 * @throws InputError with the first mistake and the number of the others
 */
export async function readTreatment(text: string, name: string, where = name): Promise<SavedTreatment> {
  const { value, mistakes } = await examined(text, where);
  if (mistakes.length === 0) return treatmentFrom(value as TreatmentRecord, name);
  const [first, ...others] = mistakes;
  const more = others.length
    ? ` (and ${others.length} more mistake${others.length > 1 ? 's' : ''} in this file)`
    : '';
  throw new InputError(first.code, first.where, first.wrong, first.right + more);
}

/** Everything that is wrong with the file of a treatment, or the first of very much; empty when it is sound. */
export async function checkTreatmentFile(text: string, where: string): Promise<InputError[]> {
  try {
    const { mistakes } = await examined(text, where);
    return firstOf(mistakes, where, (error) => error);
  } catch (error) {
    if (error instanceof InputError) return [...errorsIn(error)];
    throw error;
  }
}

async function examined(text: string, where: string): Promise<{ value: object; mistakes: InputError[] }> {
  const { value, mistakes: inText } = await dictionaryJson(text, where, WHAT);
  const { format } = value as { format?: unknown };
  if (typeof format === 'number' && format > TREATMENT_FORMAT)
    throw newerFile(where, format, TREATMENT_FORMAT);
  const { mistakesInTreatment } = await import('./dressing-mistakes.js');
  const mistakes = [
    ...inText.map(
      ({ place, wrong, right }) => new InputError('treatment-file', `${where} ${place}`, wrong, right),
    ),
    ...mistakesInTreatment(value).map(
      (phrase) => new InputError('treatment-file', where, phrase, 'correct it'),
    ),
  ];
  return { value, mistakes };
}

const WHAT = 'an object with "format", "title", "threads", "rows", ...: a treatment';
