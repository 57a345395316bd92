import { InputError } from '../input-error.js';
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
  const more = mistakes.length > 1 ? ` (and ${mistakes.length - 1} more mistakes in this file)` : '';
  throw new InputError('treatment-file', where, mistakes[0], `correct it${more}`);
}

/** Everything that is wrong with the file of a treatment; empty when it is sound. */
export async function checkTreatmentFile(text: string, where: string): Promise<InputError[]> {
  try {
    const { mistakes } = await examined(text, where);
    return mistakes.map((mistake) => new InputError('treatment-file', where, mistake, 'correct it'));
  } catch (error) {
    if (error instanceof InputError) return [error];
    throw error;
  }
}

async function examined(text: string, where: string): Promise<{ value: unknown; mistakes: string[] }> {
  const value = await dictionaryJson(text, where);
  const { format } = Object(value) as { format?: unknown };
  if (typeof format === 'number' && format > TREATMENT_FORMAT)
    throw newerFile(where, format, TREATMENT_FORMAT);
  const { mistakesInTreatment } = await import('./dressing-mistakes.js');
  return { value, mistakes: mistakesInTreatment(value) };
}
