import type { Arithmetic, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { canBeCalled } from './names.js';

/** The stitch with one more quantity worked out, after all others; as it was where it cannot be called so. */
export function measureAdded(record: StitchRecord, name: string): StitchRecord {
  if (!canBeCalled(record, 'quantity', name)) return record;
  return { ...record, measures: { ...record.measures, [name]: 'length / 2' } };
}

export const measureWritten = (record: StitchRecord, name: string, written: Arithmetic): StitchRecord => ({
  ...record,
  measures: { ...record.measures, [name]: written },
});

export function measureRemoved(record: StitchRecord, name: string): StitchRecord {
  const { measures: { [name]: _, ...measures } = {}, ...rest } = record;
  return Object.keys(measures).length ? { ...rest, measures } : rest;
}
