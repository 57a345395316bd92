import { describe, expect, it } from 'vitest';
import {
  treatmentOf,
  withoutWork,
  withPin,
  withSize,
  withThread,
  withThreadColor,
  withWeight,
  withWork,
} from '../../page/state/edits.js';
import { isMovable, withMoved } from '../../page/state/order.js';
import type { Dressing, Treatment } from '../../src/formats/dressing.js';

const seam = (id: number) => ({ id, middle: null, ends: null });
const onSeam = (id: number, stitch: string): Treatment => ({
  seam: seam(id),
  rows: [{ stitch, parameters: {}, thread: 0, passes: 3, offset: 0 }],
  ends: null,
  side: 'left',
  reverse: true,
});
const dressing: Dressing = {
  format: 'seamwright-dressing',
  version: 1,
  block: { file: 'block.svg', stops: null, snap: 0.3, through: [] },
  ends: 'tuck',
  outline: 'trim',
  gap: 0.6,
  treatments: [onSeam(1, 'feather'), onSeam(3, 'fly')],
  threads: [
    { name: 'Old gold', hex: '#c9a227', weight: 'No. 40' },
    { name: 'Garnet', hex: '#8c2f3f', weight: 'No. 40' },
  ],
  hoop: null,
  after: null,
  seed: 1,
};
const frozen = JSON.stringify(dressing);

describe('a change by hand', () => {
  it('pins the line it was made on and leaves all others, and the dressing it was made from, as they were', () => {
    const wider = withSize(dressing, 1, 0, 'width', 7);
    expect(treatmentOf(wider, 1)).toMatchObject({ pinned: true, rows: [{ parameters: { width: 7 } }] });
    expect(treatmentOf(wider, 3)).toBe(dressing.treatments[1]);
    expect(JSON.stringify(dressing)).toBe(frozen);
  });

  it('gives a line another stitch, which stands as the last one stood', () => {
    const other = withWork(dressing, seam(1), { rows: onSeam(1, 'cretan').rows });
    expect(treatmentOf(other, 1)).toMatchObject({
      side: 'left',
      reverse: true,
      rows: [{ stitch: 'cretan' }],
    });
  });

  it('leaves a line bare, also when the block is mixed again, until it gets a stitch', () => {
    const bare = withoutWork(dressing, 1);
    expect(treatmentOf(bare, 1)).toBeNull();
    expect(bare.bare).toEqual([seam(1)]);
    const dressed = withWork(bare, seam(1), { rows: onSeam(1, 'feather').rows });
    expect(dressed.bare).toEqual([]);
    expect(dressed.treatments.map((one) => one.seam.id)).toEqual([1, 3]);
  });

  it('says a weight in one way only', () => {
    const [row] = treatmentOf(withWeight(dressing, 1, { heavy: 'pearl-8' }), 1)!.rows;
    expect(row).toMatchObject({ heavy: 'pearl-8' });
    expect(row.passes).toBeUndefined();
  });

  it('takes another thread for one line, or another color for a thread wherever it is used', () => {
    expect(treatmentOf(withThread(dressing, 3, 1), 3)!.rows[0].thread).toBe(1);
    expect(withThreadColor(dressing, 0, '#112233').threads.map(({ hex }) => hex)).toEqual([
      '#112233',
      '#8c2f3f',
    ]);
  });

  it('can be unpinned', () => {
    expect(treatmentOf(withPin(withPin(dressing, 1, true), 1, false), 1)!.pinned).toBe(false);
  });
});

describe('the order of sewing', () => {
  const stops = [
    { kind: 'existing', seams: [] },
    { kind: 'treatment', seams: [1] },
    { kind: 'treatment', seams: [3] },
    { kind: 'accent', seams: [3] },
    { kind: 'treatment', seams: [2] },
  ];

  it('has a line earlier or later, as it was dragged', () => {
    expect(withMoved(dressing, stops, 4, 1).order).toEqual([2, 1, 3]);
    expect(withMoved(dressing, stops, 1, 4).order).toEqual([3, 2, 1]);
    expect(withMoved(dressing, stops, 1, 2).order).toEqual([3, 1, 2]);
  });

  it('leaves what came with the block, and what sits on a row, where they are', () => {
    expect(stops.map(isMovable)).toEqual([false, true, true, false, true]);
    expect(withMoved(dressing, stops, 0, 3)).toBe(dressing);
  });
});
