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
  readonly repeats: number;
  readonly repeatMm: number;
}

export function lineFacts(line: Line): LineFacts | null {
  const treatment = work.value && treatmentOf(work.value.dressing, line);
  if (!treatment) return null;
  const [first] = treatment.rows;
  const stitch = offers.value.find(({ name, shelf }) => shelf === 'stitch' && name === first.stitch) ?? null;
  const fit = picture.value?.report.fits.find(({ seam }) => seam === line);
  return {
    treatment,
    first,
    stitch,
    measure: (name) => {
      const about = stitch?.parameters.find((one) => one.name === name);
      return about ? { about, value: first.parameters[name] ?? about.default } : null;
    },
    repeats: fit?.repeats ?? 0,
    repeatMm: fit?.repeatMm ?? 0,
  };
}
