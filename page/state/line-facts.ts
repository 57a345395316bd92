import type { Row, Treatment } from '../../src/formats/dressing.js';
import type { Parameter } from '../../src/stitches/stitch.js';
import type { Line, Offered } from '../core/messages.js';
import { treatmentOf } from './edits.js';
import { offers, picture, work } from './work.js';

/** What a line has now. */
export interface LineFacts {
  readonly treatment: Treatment;
  readonly first: Row;
  readonly stitch: Offered | null;
  /** the stitch's own measure, and what it is now; null where it has none of that name */
  readonly measure: (name: string) => { readonly about: Parameter; readonly value: number } | null;
  /** whether what is said of its left lies to its right: nobody says to which hand it stands, and it stands to the right */
  readonly isTurnedOver: boolean;
  readonly repeats: number;
  readonly repeatMm: number;
}

export function lineFacts(line: Line): LineFacts | null {
  const treatment = work.value && treatmentOf(work.value.dressing, line);
  if (!treatment) return null;
  const [first] = treatment.rows;
  const stitch = stitchOf(first.stitch);
  const fit = picture.value?.report.fits.find(({ seam }) => seam === line);
  return {
    treatment,
    first,
    stitch,
    measure: (name) => {
      const declared = stitch?.parameters.find((one) => one.name === name);
      const about = declared && (name === 'repeat' ? steppedBy(declared, treatment.rows) : declared);
      return about ? { about, value: first.parameters[name] ?? about.default } : null;
    },
    isTurnedOver: picture.value?.turnedOver.includes(line) ?? false,
    repeats: fit?.repeats ?? 0,
    repeatMm: fit?.repeatMm ?? 0,
  };
}

/** A stitch of the library; null for one that is not there. */
export const stitchOf = (wanted: string): Offered | null =>
  offers.value.find(({ name, shelf }) => shelf === 'stitch' && name === wanted) ?? null;

const repeatOf = (stitch: string): Parameter | undefined =>
  stitchOf(stitch)?.parameters.find(({ name }) => name === 'repeat');

/** How long repeats of the first row can be, so that those of the rows that keep step with it can be as long as they must. */
function steppedBy(repeat: Parameter, [, ...others]: readonly Row[]): Parameter {
  let { min, max } = repeat;
  for (const { stitch, times = 1 } of others) {
    const own = repeatOf(stitch);
    if (!own) continue;
    min = Math.max(min, times * own.min);
    max = Math.min(max, times * own.max);
  }
  return { ...repeat, min, max };
}

/** Whether a row can have so many repeats for each of the first: they must be neither too short nor too long for its stitch. */
export function canStep(first: Row, row: Row, times: number): boolean {
  const long = first.parameters.repeat ?? repeatOf(first.stitch)?.default;
  const own = repeatOf(row.stitch);
  return !own || long === undefined || (long / times >= own.min && long / times <= own.max);
}
