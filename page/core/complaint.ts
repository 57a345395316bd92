import { InputError, wordsShortened } from '../../src/input-error.js';
import type { Complaint } from './messages.js';

/** What went wrong, in the parts that a screen shows. */
export function complaintOf(error: unknown): Complaint {
  if (error instanceof InputError) {
    const { where, wrong, right } = error;
    return { where: wordsShortened(where), wrong: wordsShortened(wrong), right: wordsShortened(right) };
  }
  const message = error instanceof Error ? error.message : String(error);
  return {
    where: 'Seamwright',
    wrong: `a fault of the program itself: ${message}`,
    right: 'your work is as it was; please report this with the file',
  };
}
