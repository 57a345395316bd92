import { rowsWeighing } from '../../src/asked/heaviness.js';
import {
  type Dressing,
  type Guide,
  type Row,
  STEEPEST_GUIDE,
  type ThreadChoice,
  type Treatment,
  type Weighted,
  type Work,
} from '../../src/formats/dressing.js';
import type { Line } from '../core/messages.js';

/** Changes of a dressing: each gives a new one and leaves the old as it was, so that it can be gone back to. */

export const treatmentOf = (dressing: Dressing, line: Line): Treatment | null =>
  dressing.treatments.find(({ seam }) => seam.id === line) ?? null;

/** What the maker changes she likes: it stays when the rest is mixed again. */
export function withTreatment(
  dressing: Dressing,
  line: Line,
  edit: (treatment: Treatment) => Treatment,
): Dressing {
  const treatments = dressing.treatments.map((one) =>
    one.seam.id === line ? { ...edit(one), pinned: true } : one,
  );
  return { ...dressing, treatments };
}

/** A line gets other work, in the threads that the dressing has; a bare one gets its first. */
export function withWork(dressing: Dressing, seam: Treatment['seam'], work: Work): Dressing {
  const { id } = seam;
  const known = treatmentOf(dressing, id);
  const { ends = null, side = null, reverse = false, corner } = known ?? {};
  const own = { seam: known?.seam ?? seam, ends, side, reverse, ...(corner && { corner }) };
  const treatment: Treatment = { ...own, pinned: true, ...work };
  const rest = dressing.treatments.filter((one) => one.seam.id !== id);
  const treatments = [...rest, treatment].sort((a, b) => rank(a) - rank(b));
  const bare = dressing.bare?.filter((one) => one.id !== id);
  return { ...dressing, treatments, ...(dressing.bare && { bare }) };
}

const rank = ({ seam: { id } }: Treatment): number => (id === 'outline' ? Number.POSITIVE_INFINITY : id);

/** A line is left bare, and stays so when the block is mixed again. */
export function withoutWork(dressing: Dressing, line: Line): Dressing {
  const known = treatmentOf(dressing, line);
  if (!known) return dressing;
  return {
    ...dressing,
    treatments: dressing.treatments.filter((one) => one !== known),
    ...(line !== 'outline' && { bare: [...(dressing.bare ?? []), known.seam] }),
  };
}

export function withPin(dressing: Dressing, line: Line, pinned: boolean): Dressing {
  const treatments = dressing.treatments.map((one) => (one.seam.id === line ? { ...one, pinned } : one));
  return { ...dressing, treatments };
}

/** A size of one of a line's rows. */
export const withSize = (
  dressing: Dressing,
  line: Line,
  row: number,
  name: string,
  value: number,
): Dressing =>
  withRow(dressing, line, row, (one) => ({ ...one, parameters: { ...one.parameters, [name]: value } }));

export const withRow = (dressing: Dressing, line: Line, row: number, edit: (row: Row) => Row): Dressing =>
  withTreatment(dressing, line, (treatment) => ({
    ...treatment,
    rows: treatment.rows.map((one, r) => (r === row ? edit(one) : one)),
  }));

/** Every thread of a color is another color: what the rows name stays. */
export const withThreadColor = (dressing: Dressing, thread: number, hex: string): Dressing => ({
  ...dressing,
  threads: dressing.threads.map((one, t) => (t === thread ? { ...one, hex, name: hex } : one)),
});

/** What a thread is called, or how thick it is. */
export const withThreadChanged = (
  dressing: Dressing,
  thread: number,
  part: Partial<Pick<ThreadChoice, 'name' | 'weight'>>,
): Dressing => ({
  ...dressing,
  threads: dressing.threads.map((one, t) => (t === thread ? { ...one, ...part } : one)),
});

/** Lines are sewn in this order, as far as their tucks let them. */
export const withOrder = (dressing: Dressing, order: readonly Line[]): Dressing => ({ ...dressing, order });

/** The line's first row, or all rows that share its thread, in another thread of the dressing. */
export const withThread = (dressing: Dressing, line: Line, thread: number): Dressing =>
  withTreatment(dressing, line, (treatment) => {
    const was = treatment.rows[0].thread;
    return {
      ...treatment,
      rows: treatment.rows.map((row) => (row.thread === was ? { ...row, thread } : row)),
    };
  });

/** A guide line begins so high and long, mm: common practice. */
const GUIDE = { height: 5, length: 24 };

/** The seam itself is followed, or a line of some shape along it. */
export const withGuide = (dressing: Dressing, line: Line, shape: string): Dressing =>
  withTreatment(dressing, line, ({ guide, ...rest }) =>
    shape === ''
      ? rest
      : {
          ...rest,
          guide: { ...GUIDE, ...guide, shape: shape as Guide['shape'] },
          rows: rowsOn(shape, rest.rows),
        },
  );

/** Two interlaced lines want a row each, back to back. */
const rowsOn = (shape: string, rows: Treatment['rows']): Treatment['rows'] =>
  shape === 'interlace' && rows.length === 1 ? [rows[0], { ...rows[0], flip: !rows[0].flip }] : rows;

/** How high and how long the waves of a guide line are, mm; none is steeper than a thread could follow. */
export const withGuideSize = (dressing: Dressing, line: Line, size: Partial<Guide>): Dressing =>
  withTreatment(dressing, line, ({ guide, ...rest }) => {
    if (!guide) return rest;
    const { shape, height, length } = { ...guide, ...size };
    const steep = STEEPEST_GUIDE * length;
    if (size.height !== undefined)
      return { ...rest, guide: { shape, height, length: Math.max(length, height / STEEPEST_GUIDE) } };
    return { ...rest, guide: { shape, height: Math.min(height, steep), length } };
  });

/** All rows of a line as heavy as a thread of the hand, or in so many passes. */
export const withWeight = (dressing: Dressing, line: Line, weight: Weighted): Dressing =>
  withTreatment(dressing, line, (treatment) => ({
    ...treatment,
    rows: rowsWeighing(treatment.rows, weight),
  }));

/** One more thread, a copy of the last in another color. */
export const withOneMoreThread = (dressing: Dressing, hex: string): Dressing => ({
  ...dressing,
  threads: [...dressing.threads, { ...dressing.threads[dressing.threads.length - 1], name: hex, hex }],
});
