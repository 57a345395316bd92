import type { LegRecord, StitchRecord } from '../../../src/stitches/stitch-record.js';
import { freeName, legsOf } from './legs.js';
import { canBeCalled, stitchNamed } from './names.js';

/** What the thread of a stitch is called that has one only. */
const ONLY = 'first';
const MOST = 6;

/** The threads there are; a file names them only when they are several. */
export const threadsOf = ({ threads }: StitchRecord): readonly string[] => threads ?? [ONLY];

/** The stitch with one more thread. */
export function threadAdded(record: StitchRecord, wanted: string): StitchRecord {
  const threads = threadsOf(record);
  if (threads.length >= MOST || !canBeCalled(record, 'thread', wanted.trim())) return record;
  return { ...record, threads: [...threads, freeName(wanted.trim(), threads)] };
}

/** The stitch without a thread: its legs go to the first that is left. With one thread left none is named. */
export function threadRemoved(record: StitchRecord, name: string): StitchRecord {
  const threads = threadsOf(record).filter((one) => one !== name);
  if (threads.length === 0) return record;
  const [first] = threads;
  const moved = stitchNamed({ ...record, threads }, { thread: (one) => (one === name ? first : one) });
  if (threads.length > 1) return legsIn(moved, (leg) => onThread(leg, leg.thread ?? null, moved));
  const { threads: _, ...rest } = moved;
  return legsIn(rest, ({ thread: __, ...leg }) => leg as LegRecord);
}

/** A leg in one of the threads; one that is in the first says nothing of it. */
export function onThread(leg: LegRecord, thread: string | null, record: StitchRecord): LegRecord {
  const { thread: _, ...rest } = leg;
  const isFirst = thread === null || thread === threadsOf(record)[0];
  return (isFirst ? rest : { ...rest, thread }) as LegRecord;
}

export const threadOf = (leg: LegRecord, record: StitchRecord): string => leg.thread ?? threadsOf(record)[0];

/** How many legs are in a thread. */
export const legsInThread = (record: StitchRecord, name: string): number =>
  legsOf(record).filter(({ leg }) => threadOf(leg, record) === name).length;

const legsIn = (record: StitchRecord, change: (leg: LegRecord) => LegRecord): StitchRecord => ({
  ...record,
  legs: record.legs.map((entry) =>
    'legs' in entry ? { ...entry, legs: entry.legs.map(change) } : change(entry),
  ),
});
