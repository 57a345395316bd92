import { lineName } from '../finding.js';
import type { Runs } from '../needle/run.js';
import type { Stop, Thread } from './design.js';
import { type Mergeable, mergedStops, type StopsBy, stopMembers } from './merge.js';

/** A treated line as sewn, in the order of lines; what the order of its stops depends on. */
export interface LineToSew {
  readonly seam: number | 'outline';
  /** lines whose treatments lie over its ends */
  readonly tucksUnder: readonly (number | 'outline')[];
  readonly layers: readonly {
    readonly kind: 'placement' | 'row' | 'accent';
    readonly title: string;
    readonly thread: Thread;
    readonly runs: Runs;
  }[];
}

export interface StopsAsked {
  readonly by: StopsBy;
  /** lines that the maker wants in this order, by their places */
  readonly wanted: readonly number[];
  /** laid width of a thread of a weight, mm */
  readonly width: (weight: string) => number;
  /** whether a line is sewn apart from the others, behind what came with the block */
  readonly isLate: (seam: number | 'outline') => boolean;
}

interface Entry {
  readonly stop: Stop;
  /** place of its line; null for an ornament */
  readonly line: number | null;
  readonly kind: 'placement' | 'row' | 'accent' | 'ornament';
}

/**
 * The color stops of a dressing, those that are sewn late last: treatments as they lie under each other, then all
 * accents, which lie on top, then ornaments. Where the maker wants fewer stops, those that may be sewn together are one.
 */
export function stopsOfLines(
  lines: readonly LineToSew[],
  ornaments: readonly Stop[],
  asked: StopsAsked,
): Stop[] {
  return groupsOf(lines, ornaments, asked).flatMap(({ given, earlier }) =>
    mergedStops(given, earlier, asked),
  );
}

/** The same stops, each as those that it is made of, with their own runs. */
export function membersOfStops(
  lines: readonly LineToSew[],
  ornaments: readonly Stop[],
  asked: StopsAsked,
): Stop[][] {
  return groupsOf(lines, ornaments, asked).flatMap(({ given, earlier }) =>
    stopMembers(given, earlier, asked).map((members) => members.map((member) => given[member].stop)),
  );
}

/** What may be sewn together: all but what is sewn late, and that. */
interface Group {
  readonly given: readonly Mergeable[];
  readonly earlier: readonly (readonly number[])[];
}

function groupsOf(lines: readonly LineToSew[], ornaments: readonly Stop[], asked: StopsAsked): Group[] {
  const ofLines = lines.flatMap((line, k) => entriesOf(line, k));
  const isAccent = ({ kind }: Entry) => kind === 'accent';
  const entries: Entry[] = [
    ...ofLines.filter((entry) => !isAccent(entry)),
    ...ofLines.filter(isAccent),
    ...ornaments.map((stop): Entry => ({ stop, line: null, kind: 'ornament' })),
  ].filter(({ stop }) => stop.runs.start.length > 1);
  const isLate = ({ line }: Entry) => line !== null && asked.isLate(lines[line].seam);
  return [entries.filter((entry) => !isLate(entry)), entries.filter(isLate)].map((group) => ({
    given: group.map(({ stop, kind }) => ({
      stop,
      isOne: kind !== 'accent',
      // the maker lays a ribbon where it shows before anything else is sewn
      isAlone: kind === 'placement',
    })),
    earlier: earlierOf(group, lines, asked),
  }));
}

function entriesOf({ seam, layers }: LineToSew, line: number): Entry[] {
  const isEdge = seam === 'outline';
  return layers.map(({ kind, title, thread, runs }): Entry => {
    const stop: Stop = {
      title: isEdge ? `${title}, edge` : `${title}, ${lineName(seam)}`,
      kind: kind === 'accent' ? 'accent' : isEdge ? 'edge' : 'treatment',
      seams: [seam],
      thread,
      runs,
    };
    return { stop, line, kind };
  });
}

/**
 * For each entry those that it has to follow, whether their thread meets or not: rows of a line follow each other, a row
 * follows those that tuck under it, lines follow each other as the maker wants.
 */
function earlierOf(
  entries: readonly Entry[],
  lines: readonly LineToSew[],
  { wanted }: StopsAsked,
): number[][] {
  const rows = new Map<number, number[]>();
  entries.forEach(({ line, kind }, i) => {
    if (line === null || kind === 'accent') return;
    rows.set(line, [...(rows.get(line) ?? []), i]);
  });
  const place = new Map(lines.map(({ seam }, k) => [seam, k]));
  const earlier = entries.map((): number[] => []);
  const follow = (before: number, after: number) => {
    for (const a of rows.get(after) ?? []) {
      for (const b of rows.get(before) ?? []) if (b < a) earlier[a].push(b);
    }
  };
  lines.forEach(({ tucksUnder }, k) => {
    follow(k, k);
    for (const seam of tucksUnder) {
      const over = place.get(seam);
      if (over !== undefined && over !== k) follow(k, over);
    }
  });
  for (let i = 1; i < wanted.length; i++) follow(wanted[i - 1], wanted[i]);
  return earlier;
}
