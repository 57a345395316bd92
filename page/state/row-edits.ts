import type { Dressing, Row, Treatment, Work } from '../../src/formats/dressing.js';
import type { Line, Offered } from '../core/messages.js';
import { withTreatment } from './edits.js';
import { lengthIn } from './units.js';

/** Changes of the rows of a line. Rows are counted from 0; the first sets the step for the others. */

/** A line holds no more rows, nor more accents. */
export const MOST_ROWS = 20;

/** How far a row is moved off its seam at most, mm: the page's own, a dressing takes more. */
export const FARTHEST_ROW = 20;

/** "3.0 mm left" @param isTurnedOver see LineFacts */
export const offsetTold = (mm: number, isTurnedOver: boolean): string =>
  mm === 0 ? 'on it' : `${lengthIn(Math.abs(mm))} ${mm > 0 === isTurnedOver ? 'right' : 'left'}`;

/** One more row, as heavy as the first and in its thread: back to back with it, which is how two rows commonly stand. */
export const withOneMoreRow = (dressing: Dressing, line: Line, stitch: Offered): Dressing =>
  withTreatment(dressing, line, (treatment) => {
    const [first] = treatment.rows;
    const row = withStitch({ ...first, offset: 0, flip: !first.flip }, stitch, dressing.threads.length);
    return { ...treatment, rows: [...treatment.rows, row] };
  });

/** A row in another stitch: of its sizes those stay that the stitch can have. */
export function withStitch(row: Row, { name, parameters, threads }: Offered, spools: number): Row {
  const { moreThreads: _, ...rest } = row;
  const kept = parameters.flatMap(({ name: size, min, max }) => {
    const value = row.parameters[size];
    return value === undefined || (row.stitch !== name && size !== 'width' && size !== 'repeat')
      ? []
      : [[size, Math.min(max, Math.max(min, value))] as const];
  });
  const more = threads.slice(1).map((_one, k) => (row.thread + k + 1) % Math.max(1, spools));
  return {
    ...rest,
    stitch: name,
    parameters: Object.fromEntries(kept),
    ...(more.length > 0 && { moreThreads: more }),
  };
}

/** A row is taken off, and the accents that sit on it. The first stays: without it there is no step to keep. */
export const withoutRow = (dressing: Dressing, line: Line, row: number): Dressing =>
  withTreatment(dressing, line, (treatment) => {
    const { rows, accents } = treatment;
    if (rows.length < 2) return treatment;
    return {
      ...treatment,
      rows: rows.filter((_, r) => r !== row),
      ...(accents && {
        accents: accents.flatMap((one) =>
          one.row === row ? [] : [{ ...one, row: one.row > row ? one.row - 1 : one.row }],
        ),
      }),
    };
  });

/** What a stitch's second thread and further ones are. @param nth from 1 */
export const withFurtherThread = <T extends { thread: number; moreThreads?: readonly number[] }>(
  one: T,
  nth: number,
  thread: number,
): T => {
  const more = [...(one.moreThreads ?? [])];
  while (more.length < nth) more.push(one.thread);
  more[nth - 1] = thread;
  return { ...one, moreThreads: more };
};

/** Rows, accents and guide line of one line, given to others. */
export function withSameWork(dressing: Dressing, from: Treatment): Dressing {
  const { rows, accents, laid, guide } = from;
  const work: Work = {
    rows,
    ...(accents && { accents }),
    ...(laid && { laid }),
    ...(guide && { guide }),
  };
  const treatments = dressing.treatments.map((one): Treatment => {
    if (one.pinned || one === from || one.seam.id === 'outline') return one;
    const { seam, ends, side, reverse, corner } = one;
    return { seam, ends, side, reverse, ...(corner && { corner }), ...work };
  });
  return { ...dressing, treatments };
}
