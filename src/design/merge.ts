import { polylineLength } from '../geometry/polyline.js';
import type { Stop, Thread } from './design.js';
import { fewStops } from './few-stops.js';
import { mergedTitle } from './merged-title.js';
import { type Piece, runsOf } from './pieces.js';
import { touching } from './touching.js';
import { walkedPieces } from './walk-pieces.js';

/** What shares a color stop: each row is one of its own, one for each thread, or all in one. */
export type StopsBy = 'row' | 'thread' | 'all';

/** A color stop as it would be by itself. */
export interface Mergeable {
  readonly stop: Stop;
  /** it is sewn in one go; otherwise its run segments may be sewn in any order */
  readonly isOne: boolean;
  /** the machine has to halt after it */
  readonly isAlone: boolean;
}

export interface Merging {
  readonly by: StopsBy;
  /** laid width of a thread of a weight, mm */
  readonly width: (weight: string) => number;
}

/**
 * Color stops with those that share a thread, or all, sewn together; given in an order in which each may lie over those
 * before it. Whatever of two stops comes into touch, and whatever `earlier` says, stays in that order: where something
 * else has to be sewn in between, a thread keeps several stops. Within a stop jumps are kept short.
 */
export function mergedStops(
  given: readonly Mergeable[],
  earlier: readonly (readonly number[])[],
  { by, width }: Merging,
): Stop[] {
  if (by === 'row' || given.length < 2) return given.map(({ stop }) => stop);
  const pieces = piecesOf(given, width);
  return gathered(given, pieces, earlier, by).map((members) =>
    members.length === 1
      ? given[members[0]].stop
      : together(
          members.map((member) => given[member]),
          members.map((member) => pieces[member]),
          members.map((member) => earlier[member].map((one) => members.indexOf(one)).filter((at) => at >= 0)),
          by,
        ),
  );
}

/** Which of the given each of those stops sews, ascending; the walk within them is not looked for. */
export function stopMembers(
  given: readonly Mergeable[],
  earlier: readonly (readonly number[])[],
  { by, width }: Merging,
): number[][] {
  if (by === 'row' || given.length < 2) return given.map((_, i) => [i]);
  return gathered(given, piecesOf(given, width), earlier, by);
}

const piecesOf = (given: readonly Mergeable[], width: Merging['width']): Piece[] =>
  given.map(({ stop }): Piece => ({ runs: runsOf(stop.runs), width: width(stop.thread.weight) }));

function gathered(
  given: readonly Mergeable[],
  pieces: readonly Piece[],
  earlier: readonly (readonly number[])[],
  by: StopsBy,
): number[][] {
  const all = touching(pieces).map((near, i) => [...new Set([...near, ...earlier[i]])]);
  const kinds = given.map(({ stop, isAlone }, i) =>
    isAlone ? i : by === 'all' ? '' : threadKey(stop.thread),
  );
  return fewStops(kinds, all);
}

function together(
  members: readonly Mergeable[],
  whole: readonly Piece[],
  earlier: readonly (readonly number[])[],
  by: StopsBy,
): Stop {
  const pieces: Piece[] = [];
  // one piece of a member that is sewn in one go: only such have to wait for each other whether they touch or not
  const first = members.map(({ isOne }, m) => {
    const at = pieces.length;
    if (isOne) pieces.push(whole[m]);
    else pieces.push(...whole[m].runs.map((run): Piece => ({ runs: [run], width: whole[m].width })));
    return at;
  });
  const waits: number[][] = pieces.map(() => []);
  earlier.forEach((before, m) => {
    waits[first[m]] = before.map((one) => first[one]);
  });
  const stops = members.map(({ stop }) => stop);
  const kinds = new Set(stops.map(({ kind }) => kind));
  return {
    title: mergedTitle(stops, by === 'thread'),
    kind: kinds.size === 1 ? stops[0].kind : 'treatment',
    seams: [...new Set(stops.flatMap(({ seams }) => seams))],
    thread: mostUsed(stops, whole),
    runs: walkedPieces(pieces, waits),
  };
}

/** The thread that most of what is sewn was to have. */
function mostUsed(stops: readonly Stop[], pieces: readonly Piece[]): Thread {
  const used = new Map<string, { thread: Thread; length: number }>();
  stops.forEach(({ thread }, i) => {
    const length = pieces[i].runs.reduce((sum, run) => sum + polylineLength(run), 0);
    const key = threadKey(thread);
    used.set(key, { thread, length: length + (used.get(key)?.length ?? 0) });
  });
  return [...used.values()].reduce((most, one) => (one.length > most.length ? one : most)).thread;
}

/** Threads are one when nothing tells them apart. */
export const threadKey = ({ name, hex, weight }: Thread): string => JSON.stringify([name, hex, weight]);
