import { type LineId, meetings } from '../../block/meetings.js';
import type { Patch, SeamMap } from '../../block/seam-map.js';
import { CLEAR, SEEN } from '../../color/contrast.js';
import type { Difference } from '../../color/difference.js';
import { BUSY, type Fabric, plainFabric, showing } from '../../color/fabric.js';
import { type ThreadChoice, threadColors } from '../../formats/dressing.js';
import type { Runs } from '../../needle/run.js';
import { type ClothBeside, clothBeside } from './cloth-beside.js';

/** One thread of a row, an accent or an ornament, as it is sewn. */
export interface SewnThread {
  /** null for an ornament */
  readonly line: LineId | null;
  /** the same for all that one treatment or ornament works in one thread of the dressing */
  readonly use: string;
  readonly title: string;
  readonly kind: 'placement' | 'row' | 'accent' | 'ornament';
  readonly thread: ThreadChoice;
  /** what is worked: treatments of one line are alike where their first rows are */
  readonly stitch: string;
  /** whether it lies heavier than usual, by thread or passes */
  readonly isHeavy: boolean;
  readonly passes: number;
  readonly runs: Runs;
}

/** A stretch of a thread's work and the patches with known fabrics beside it. */
export interface Ground {
  /** of the work, as a share */
  readonly share: number;
  /** along the seam, mm; on it alone */
  readonly from?: number;
  readonly to?: number;
  /** one or two of them, of those that the thread lies on */
  readonly sides: readonly { readonly hand: 'left' | 'right' | null; readonly patch: number }[];
}

/** A fabric that lies beside a thread, and how the thread shows on it. */
export interface Beside {
  /** of the seam, in its direction; null along the outline and under an ornament */
  readonly hand: 'left' | 'right' | null;
  readonly patch: number;
  /** contrast ratio, 1 to 21, along two thirds of the way at least */
  readonly contrast: number;
  /** share of the way along which it is visible */
  readonly seen: number;
}

/** A stretch of a thread's work, and how it shows there. */
export interface Place extends Ground {
  readonly sides: readonly Beside[];
}

export type Verdict = 'clear' | 'visible' | 'lost' | 'unknown';

export interface ThreadContrast {
  /** index into the threads given */
  readonly of: number;
  readonly places: readonly Place[];
  /** 0 where it melts into the fabrics on both sides everywhere, 1 where it is clear on one and visible on the other; null without fabrics */
  readonly score: number | null;
  /** by the worst place that is a tenth of its work or more */
  readonly shows: Verdict;
  /** it lies on a busy print and is no heavier than usual */
  readonly isThinOnPrint: boolean;
}

/** Two treatments that meet, by their first rows: how different their threads look, and whether the stitch is the same. */
export interface Meeting {
  readonly lines: readonly [LineId, LineId];
  readonly threads: readonly [ThreadChoice, ThreadChoice];
  readonly difference: number;
  readonly sameStitch: boolean;
}

export interface ContrastLook {
  readonly threads: readonly SewnThread[];
  readonly contrasts: readonly ThreadContrast[];
  readonly meetings: readonly Meeting[];
}

/** A side with less of the work than this, or a place with less of it, does not count. */
const LEAST_SHARE = 0.1;

/**
 * How every thread stands out from the fabrics beside it, stretch by stretch, and how different those look that meet.
 * Cost: a few hundred places a thread, the pairs of lines that meet.
 */
export function contrastLook(
  map: SeamMap,
  threads: readonly SewnThread[],
  difference: Difference,
): ContrastLook {
  return {
    threads,
    contrasts: threadContrasts(map, threads),
    meetings: meetingsOf(map, threads, difference),
  };
}

/** How every thread stands out from the fabrics beside it, stretch by stretch. */
export function threadContrasts(map: SeamMap, threads: readonly SewnThread[]): ThreadContrast[] {
  const beside = clothBeside(map.patches);
  return threads.map((one, of) => ({ of, ...threadContrast(map, one, beside) }));
}

/** All that a patch's fabric is known to be; null where nothing is. */
export const fabricOfPatch = ({ print, fabric }: Patch): Fabric | null =>
  print ?? (fabric === null ? null : plainFabric(fabric));

function threadContrast(map: SeamMap, one: SewnThread, beside: ClothBeside): Omit<ThreadContrast, 'of'> {
  const grounds = groundsOf(map, one, beside);
  const places = shownOn(map, grounds, one.thread);
  return {
    places,
    score: scoreOf(places),
    shows: verdictOf(places),
    isThinOnPrint: one.kind === 'row' && isBusy(map, grounds) && !one.isHeavy,
  };
}

/** How a thread would show on these grounds. */
export const shownOn = (
  { patches }: Pick<SeamMap, 'patches'>,
  grounds: readonly Ground[],
  thread: ThreadChoice,
): Place[] =>
  grounds.map(({ sides, ...ground }) => ({
    ...ground,
    sides: sides.map((side) => ({
      ...side,
      ...showing(threadColors(thread), fabricOfPatch(patches[side.patch - 1])!),
    })),
  }));

/** Whether one of them is a busy print. */
export const isBusy = ({ patches }: Pick<SeamMap, 'patches'>, grounds: readonly Ground[]): boolean =>
  grounds.some(({ sides }) => sides.some(({ patch }) => (patches[patch - 1].print?.busyness ?? 0) >= BUSY));

/** The mean of its places' scores; null where there are none. */
export function scoreOf(places: readonly Place[]): number | null {
  const known = places.reduce((sum, { share }) => sum + share, 0);
  return known ? places.reduce((sum, place) => sum + place.share * placeScore(place), 0) / known : null;
}

/** Nine tenths for the side it shows on best, from not visible to clear; the last for being visible on the other too. */
export function placeScore({ sides }: Pick<Place, 'sides'>): number {
  const ratios = sides.map(({ contrast }) => contrast);
  const [low, high] = [Math.min(...ratios), Math.max(...ratios)];
  if (high < SEEN) return 0;
  const clear = Math.min(1, (high - SEEN) / (CLEAR - SEEN));
  return 0.5 + 0.4 * clear + (low >= SEEN ? 0.1 : 0);
}

/** The contrast on the side where a thread shows best: it may melt into one side, never into both. */
export const bestContrast = ({ sides }: Pick<Place, 'sides'>): number =>
  Math.max(...sides.map(({ contrast }) => contrast));

/** Of a contrast ratio. */
export const verdictOfContrast = (ratio: number): Exclude<Verdict, 'unknown'> =>
  ratio >= CLEAR ? 'clear' : ratio >= SEEN ? 'visible' : 'lost';

export function verdictOf(places: readonly Place[]): Verdict {
  const counting = places.filter(({ share }) => share >= LEAST_SHARE);
  const told = counting.length > 0 ? counting : places;
  return told.length > 0 ? verdictOfContrast(Math.min(...told.map(bestContrast))) : 'unknown';
}

/** Where a thread lies, as far as the fabrics there are known. */
export function groundsOf(
  map: SeamMap,
  { line, runs }: Pick<SewnThread, 'line' | 'runs'>,
  beside: ClothBeside,
): Ground[] {
  const sewn = beside(runs);
  const on = (patch: number | null): number => (patch === null ? 0 : (sewn.get(patch) ?? 0));
  const side = <Hand extends 'left' | 'right' | null>(patch: number | null, hand: Hand) =>
    patch === null || !fabricOfPatch(map.patches[patch - 1]) ? [] : [{ hand, patch }];
  if (typeof line !== 'number') {
    const whole = [...sewn.values()].reduce((sum, length) => sum + length, 0);
    return [...sewn]
      .sort(([a], [b]) => a - b)
      .map(([patch, length]) => ({ share: length / whole, sides: side(patch, null) }))
      .filter(({ share, sides }) => sides.length > 0 && share >= LEAST_SHARE);
  }
  const seam = map.seams[line - 1];
  const length = seam.sides.at(-1)?.to || 1;
  return seam.sides.flatMap(({ from, to, left, right }): Ground[] => {
    // of one that stands to one hand alone, the other side's cloth says nothing
    const least = LEAST_SHARE * (on(left) + on(right));
    const sides = [
      ...(on(left) > least ? side(left, 'left') : []),
      ...(on(right) > least ? side(right, 'right') : []),
    ];
    return sides.length > 0 ? [{ share: (to - from) / length, from, to, sides }] : [];
  });
}

function meetingsOf(map: SeamMap, threads: readonly SewnThread[], difference: Difference): Meeting[] {
  const main = new Map<LineId, SewnThread>();
  for (const one of threads) {
    if (one.kind === 'row' && one.line !== null && !main.has(one.line)) main.set(one.line, one);
  }
  const found: Meeting[] = [];
  for (const [line, others] of meetings(map)) {
    const a = main.get(line);
    if (!a) continue;
    for (const other of others) {
      const b = main.get(other);
      if (!b || rank(other) <= rank(line)) continue;
      found.push({
        lines: [line, other],
        threads: [a.thread, b.thread],
        difference: leastDifference(a.thread, b.thread, difference),
        sameStitch: a.stitch === b.stitch,
      });
    }
  }
  return found.sort((a, b) => rank(a.lines[0]) - rank(b.lines[0]) || rank(a.lines[1]) - rank(b.lines[1]));
}

const rank = (line: LineId): number => (line === 'outline' ? Number.POSITIVE_INFINITY : line);

/** Of variegated threads the difference of their most similar colors: there they cannot be told apart. */
export function leastDifference(a: ThreadChoice, b: ThreadChoice, difference: Difference): number {
  return Math.min(
    ...threadColors(a).flatMap((one) => threadColors(b).map((other) => difference(one, other))),
  );
}
