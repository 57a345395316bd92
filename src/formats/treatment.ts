import type { ThreadChoice, Work } from './dressing.js';

/** A treatment saved in a library under its file's name: what a seam can get, and the threads for it. */
export interface SavedTreatment extends Work {
  /** its file's name without the ending */
  readonly name: string;
  readonly title: string;
  readonly otherNames: readonly string[];
  /** what it is for, a sentence */
  readonly use: string;
  /** where it was learned */
  readonly sources: readonly string[];
  /** its rows and accents name these by their index */
  readonly threads: readonly ThreadChoice[];
}

export const TREATMENT_FORMAT = 1;

/** A treatment's file as it stands. */
export interface TreatmentRecord extends Omit<SavedTreatment, 'name' | 'use'> {
  readonly format: typeof TREATMENT_FORMAT;
  readonly for: string;
}

/** The treatment in the text of a file that is known to be well formed, as the built-in ones are. */
export function parseTreatment(text: string, name: string): SavedTreatment {
  return treatmentFrom(JSON.parse(text) as TreatmentRecord, name);
}

export function treatmentFrom(record: TreatmentRecord, name: string): SavedTreatment {
  const { title, otherNames, sources, threads, rows, accents, laid, guide } = record;
  return {
    name,
    title,
    otherNames,
    use: record.for,
    sources,
    threads,
    rows,
    ...(accents && { accents }),
    ...(laid && { laid }),
    ...(guide && { guide }),
  };
}
