import { meetings } from './block/meetings.js';
import type { SeamMap } from './block/seam-map.js';
import { clothBeside } from './check/contrast/cloth-beside.js';
import {
  type Ground,
  groundsOf,
  isBusy,
  leastDifference,
  type SewnThread,
  scoreOf,
  shownOn,
  type Verdict,
  verdictOf,
} from './check/contrast/thread-contrast.js';
import type { Difference } from './color/difference.js';
import { type Dressed, membersOfNewStops } from './dress.js';
import type { Dressing, ThreadChoice } from './formats/dressing.js';
import { assignAsMerged } from './harmony/assign-merged.js';
import { type Assigned, type Assignment, usesOf } from './harmony/assignment.js';
import { rethreaded, ThreadList, workRethreaded } from './harmony/threading.js';
import { threadWidth } from './needle/craft.js';
import type { Runs } from './needle/run.js';
import { isHeavy, sewnThreads, useOf } from './thread-look.js';

export interface StashLimits {
  /** so many threads at most */
  readonly palette?: number;
  /** so many changes of thread at most, counted over the new color stops in their order */
  readonly changes?: number;
}

/** What one treatment or ornament works in one thread, and the thread of the stash it is to have. */
export interface ThreadPlan {
  readonly sewn: readonly SewnThread[];
  readonly thread: ThreadChoice;
  readonly shows: Verdict;
  /** the least contrast on its better side; null where no fabric is known */
  readonly contrast: number | null;
  readonly isOnPrint: boolean;
  /** whether another thread of the stash would show better there */
  readonly isBestShown: boolean;
  /** the least difference from what it meets in another thread; null where all that it meets has the same, or it meets nothing */
  readonly apart: number | null;
  /** it meets the same thread */
  readonly meetsItself: boolean;
}

export interface StashChoice {
  readonly dressing: Dressing;
  readonly plans: readonly ThreadPlan[];
  readonly threads: number;
  readonly changes: number;
  /** no other assignment is better, by its own measure */
  readonly isBest: boolean;
}

/**
 * What makes an assignment good. Our own choice: to be seen comes first, then the weight that the dressing asks for, then
 * that neighbors differ; what all that leaves open goes to the color that was there, and to fewer threads and changes.
 */
const PRICES = {
  /** not to be seen at all, beside being clear on one side and visible on the other */
  unseen: 3,
  /** another thickness by a fifth of a millimeter, or more */
  weight: 1,
  thinOnPrint: 0.4,
  otherColor: 0.25,
  /** alike where two treatments meet, in different stitches and in the same one */
  meets: 0.4,
  meetsInStitch: 0.9,
  /** alike within one treatment, where the dressing has two threads */
  within: 0.7,
  perThread: 0.12,
  perChange: 0.04,
};
/** Differences by CIEDE2000 from which on threads set each other off, and another color is quite another. Our own choice. */
const PLAIN = 20;
const QUITE_ANOTHER = 60;
const WIDER = 0.2;

/** One thing that gets one thread: all that a treatment or ornament works in one thread of the dressing. */
interface Thing {
  readonly use: string;
  readonly owner: string;
  readonly sewn: readonly SewnThread[];
  readonly grounds: readonly (readonly Ground[])[];
  /** mm of thread, over the mean */
  readonly weight: number;
}

/** The best threads of a stash for a dressed block. Pure: the same input gives the same choice. */
export function threadsFromStash(
  dressed: Dressed,
  stash: readonly ThreadChoice[],
  limits: StashLimits,
  difference: Difference,
): StashChoice {
  const { map } = dressed.block;
  const sewn = sewnThreads(dressed);
  const things = thingsOf(map, sewn);
  const pairs = pairsOf(map, things);
  const puzzle: Assignment = {
    own: things.map((thing) => stash.map((thread) => ownPrice(map, thing, thread, difference))),
    pairs,
    clash: stash.map((a) => stash.map((b) => Math.max(0, 1 - leastDifference(a, b, difference) / PLAIN))),
    order: [],
    perThread: PRICES.perThread,
    perChange: PRICES.perChange,
    mostThreads: limits.palette,
    mostChanges: limits.changes,
  };
  const found = assignAsMerged(puzzle, dressed.dressing.stopPer ?? 'row', dressed.dressing.seed, (chosen) =>
    sewnInOrder(dressed, sewn, things, chosen?.map((thread) => stash[thread]) ?? null),
  );
  const { threads, changes } = usesOf({ order: found.order }, found.chosen);
  return {
    dressing: withChosen(dressed.dressing, things, stash, found),
    plans: things.map((thing, i) => planOf(map, thing, i, stash, found.chosen, puzzle, difference)),
    threads,
    changes,
    isBest: found.isBest,
  };
}

/**
 * The things as the machine sews them, each as often as it does: by the color stops of rows, or, with threads given for the
 * things, by those that the dressing will have in these.
 */
function sewnInOrder(
  dressed: Dressed,
  sewn: readonly SewnThread[],
  things: readonly Thing[],
  threads: readonly ThreadChoice[] | null,
): number[] {
  const thingOf = new Map(things.map(({ use }, i) => [use, i]));
  const ofRuns = new Map(sewn.map(({ runs, use }) => [runs, thingOf.get(use)!]));
  const inThread = <T extends { readonly runs: Runs; readonly thread: ThreadChoice }>(one: T): T => {
    const thing = ofRuns.get(one.runs);
    return threads === null || thing === undefined ? one : { ...one, thread: threads[thing] };
  };
  const stops = membersOfNewStops({
    block: dressed.block,
    dressing: threads === null ? { ...dressed.dressing, stopPer: 'row' } : dressed.dressing,
    lines: dressed.lines.map((line) => ({ ...line, layers: line.layers.map(inThread) })),
    ornaments: dressed.ornaments.map(inThread),
  });
  return stops.flatMap((members) => members.flatMap(({ runs }) => ofRuns.get(runs) ?? []));
}

function thingsOf(map: SeamMap, sewn: readonly SewnThread[]): Thing[] {
  const beside = clothBeside(map.patches);
  const groups = [...indicesBy(sewn, ({ use }) => use)].map(
    ([use, at]) => [use, at.map((i) => sewn[i])] as const,
  );
  const lengths = groups.map(([, group]) => group.reduce((sum, { runs }) => sum + runs.xy.length, 0));
  const mean = lengths.reduce((sum, length) => sum + length, 0) / (lengths.length || 1);
  return groups.map(([use, group], i) => ({
    use,
    owner: use.replace(/ thread \d+$/, ''),
    sewn: group,
    grounds: group.map((one) => groundsOf(map, one, beside)),
    // of much thread more is seen, but little is not nothing
    weight: 0.5 + 0.5 * Math.min(2, lengths[i] / mean),
  }));
}

function ownPrice(map: SeamMap, thing: Thing, thread: ThreadChoice, difference: Difference): number {
  const parts = thing.sewn.map((one, k) => {
    const grounds = thing.grounds[k];
    const score = scoreOf(shownOn(map, grounds, thread)) ?? 1;
    const wider = Math.abs(threadWidth(thread.weight) - threadWidth(one.thread.weight));
    const onPrint = isBusy(map, grounds) && one.kind === 'row';
    const heavier = threadWidth(thread.weight) > threadWidth(one.thread.weight);
    const thin = onPrint && !isHeavy(thread.weight, one.passes);
    const other = Math.min(1, leastDifference(thread, one.thread, difference) / QUITE_ANOTHER);
    return (
      PRICES.unseen * (1 - score) +
      (onPrint && heavier ? 0 : PRICES.weight * Math.min(1, wider / WIDER)) +
      (thin ? PRICES.thinOnPrint : 0) +
      PRICES.otherColor * other
    );
  });
  return (thing.weight * parts.reduce((sum, part) => sum + part, 0)) / parts.length;
}

/** Things that are seen together: what one treatment works in two threads, and rows that meet. */
function pairsOf(map: SeamMap, things: readonly Thing[]): Assignment['pairs'] {
  const meets = meetings(map);
  const rows = things.map(({ sewn }) => sewn.find(({ kind }) => kind === 'row'));
  const ofOwner = indicesBy(things, ({ owner }) => owner);
  const onLine = indicesBy(rows, (row) => row?.line ?? null);
  return things.flatMap((one, a) => {
    const row = rows[a];
    const met = row ? [...(meets.get(row.line!) ?? [])].flatMap((line) => onLine.get(line) ?? []) : [];
    const others = new Set([...ofOwner.get(one.owner)!, ...met]);
    return [...others]
      .filter((b) => b > a)
      .sort((b, c) => b - c)
      .map((b) => {
        if (one.owner === things[b].owner) return { a, b, weight: PRICES.within };
        return { a, b, weight: row!.stitch === rows[b]!.stitch ? PRICES.meetsInStitch : PRICES.meets };
      });
  });
}

/** Where in a list what has the same key stands. */
function indicesBy<T, K>(list: readonly T[], keyOf: (one: T) => K): Map<K, number[]> {
  const all = new Map<K, number[]>();
  list.forEach((one, i) => {
    const key = keyOf(one);
    const known = all.get(key);
    if (known) known.push(i);
    else all.set(key, [i]);
  });
  return all;
}

function planOf(
  map: SeamMap,
  thing: Thing,
  index: number,
  stash: readonly ThreadChoice[],
  chosen: readonly number[],
  { pairs }: Assignment,
  difference: Difference,
): ThreadPlan {
  const thread = stash[chosen[index]];
  const shown = (one: ThreadChoice) => thing.grounds.flatMap((grounds) => shownOn(map, grounds, one));
  const places = shown(thread);
  const score = scoreOf(places);
  const met = pairs.flatMap(({ a, b }) => (a === index ? [chosen[b]] : b === index ? [chosen[a]] : []));
  const others = met.filter((other) => other !== chosen[index]);
  return {
    sewn: thing.sewn,
    thread,
    shows: verdictOf(places),
    contrast: places.length
      ? Math.min(...places.map(({ sides }) => Math.max(...sides.map((side) => side.contrast))))
      : null,
    isOnPrint: thing.grounds.some((grounds) => isBusy(map, grounds)),
    isBestShown: score === null || stash.every((one) => (scoreOf(shown(one)) ?? 0) <= score + 1e-9),
    apart: others.length
      ? Math.min(...others.map((other) => leastDifference(thread, stash[other], difference)))
      : null,
    meetsItself: met.length > others.length,
  };
}

/** The dressing in the threads chosen; what is not sewn keeps the thread it had. */
function withChosen(
  dressing: Dressing,
  things: readonly Thing[],
  stash: readonly ThreadChoice[],
  { chosen }: Assigned,
): Dressing {
  const list = new ThreadList([]);
  // those that are sewn first stand first
  const placed = new Map(things.map(({ use }, i) => [use, list.place(stash[chosen[i]])]));
  const exchange = (of: 'treatment' | 'ornament', index: number) => (thread: number) =>
    placed.get(useOf(of, index, thread)) ?? list.place(dressing.threads[thread]);
  const treatments = dressing.treatments.map((one, t) => ({
    ...one,
    ...workRethreaded(one, exchange('treatment', t)),
  }));
  const ornaments = dressing.ornaments?.map((one, k) => rethreaded(one, exchange('ornament', k)));
  return { ...dressing, treatments, ...(ornaments && { ornaments }), threads: list.list };
}
