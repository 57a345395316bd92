import type { SeamMap } from '../block/seam-map.js';
import { type Finding, lineName } from '../finding.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { areaIndex } from '../geometry/area-index.js';
import { cumulativeLength, type Points, reversed } from '../geometry/polyline.js';
import type { Runs } from '../needle/run.js';
import type { Unit } from '../stitches/stitch.js';
import { NOTE_OVER, WARN_OVER } from './bare-seam.js';
import { coveredBy, leastAlong, typicalGap } from './thread-along.js';

/** Thread of a line that is met covers the end of a seam as far beside it, mm: about the length of a short repeat. */
const COVERS = 3;
/** Ends may stay bare by this much beyond where the figure of the stitch begins: an outline to be trimmed, a slant, mm. */
const SLACK = 1;
/** Thread of the treatment itself may lie this far beyond its reach: ends lean, mm. */
const LEAN = 1;
/** So many repeats tell how openly a stitch stands. */
const ENOUGH = 8;

/** A dressed seam, with the thread of its rows as sewn. */
export interface SewnSeam {
  readonly seam: number;
  readonly reach: number;
  readonly repeats: number;
  /** how far inside its repeats the figure itself begins or ends, mm */
  readonly inset: number;
  readonly own: readonly Runs[];
  /** whether its start and its end were asked to stay bare, or a finding has said why they are */
  readonly explained: readonly [start: boolean, end: boolean];
}

/** Codes of findings that say why ends stay bare. */
const REASONS: ReadonlySet<string> = new Set(['margins', 'ring-of-tucks']);

/** Lines of which a finding has said why their ends are bare. */
export const explainedEnds = (said: readonly Finding[]): ReadonlySet<Finding['seam']> =>
  new Set(said.filter(({ code }) => REASONS.has(code)).map(({ seam }) => seam));

/** How far inside one repeat its thread begins or ends, whichever is further, mm. */
export function insetOf({ legs, length }: Unit): number {
  let [first, last] = [length, 0];
  for (const { kind, path } of legs) {
    if (kind === 'under') continue;
    for (let i = 0; i < path.length; i += 2) {
      first = Math.min(first, path[i]);
      last = Math.max(last, path[i]);
    }
  }
  return Math.max(0, first, length - last);
}

/** How much of a seam is bare before its treatment begins, and after it ends, mm from its ends. */
export interface BareEnds {
  readonly findings: readonly Finding[];
  /** for each seam where its own thread begins and ends along it, mm from its start: what lies between is no end */
  readonly between: ReadonlyMap<number, readonly [number, number]>;
}

/**
 * Seams that are bare at an end, though nobody asked for it: from where the seam's own thread begins, seen square across
 * the seam, to the end, or to the thread that covers the end, of those that meet there. A stitch that stands as openly
 * all along its seam has no barer ends for it, nor has one whose repeats begin with bare cloth. Cost: one look at every stitch, and more at ends alone.
 */
export function bareEnds(
  map: SeamMap,
  seams: readonly SewnSeam[],
  threadOf: (seam: number | 'outline') => readonly Runs[],
  keepClear: readonly KeptArea[] = [],
): BareEnds {
  const areas = keepClear.map(({ area }) => areaIndex(area));
  const between = new Map<number, readonly [number, number]>();
  const findings = seams.flatMap((sewn): Finding[] => {
    const { points, ends, closed } = map.seams[sewn.seam - 1];
    if (closed || !ends) return [];
    const bare = [points, reversed(points)].map((line, which) => {
      const { junction } = ends[which];
      const arms = junction < 0 ? [] : map.junctions[junction].arms;
      const others = arms.filter(({ seam }) => seam !== sewn.seam);
      return bareEnd(
        line,
        sewn,
        others.map(({ seam, direction }) => ({ direction, threads: threadOf(seam) })),
      );
    });
    if (bare.some((end) => end === null)) return [];
    const [start, end] = bare as BareEnd[];
    const { total } = start;
    between.set(sewn.seam, [start.to, total - end.to]);
    return [start, end].flatMap((one, which) => {
      if (sewn.explained[which]) return [];
      const length = one.to - one.from;
      const isKept = areas.some((away) => away(...one.middle, sewn.reach + COVERS) < sewn.reach + COVERS);
      if (length <= Math.max(NOTE_OVER, sewn.inset + SLACK) || isKept || length <= one.usual()) return [];
      return [findingOf(sewn.seam, which === 0 ? 'start' : 'end', one)];
    });
  });
  return { findings, between };
}

/** A line that is met: which way it leads from the meeting, radians, and what is sewn along it. */
interface Other {
  readonly direction: number;
  readonly threads: readonly Runs[];
}

interface BareEnd {
  readonly from: number;
  readonly to: number;
  readonly total: number;
  readonly middle: readonly [number, number];
  /** how far apart its own thread usually stands along it */
  readonly usual: () => number;
}

/** What is bare at the start of a line; null when nothing of its own is sewn along it. */
function bareEnd(line: Points, { reach, repeats, own }: SewnSeam, others: readonly Other[]): BareEnd | null {
  const at = cumulativeLength(line);
  const total = at[at.length - 1];
  const to = leastAlong(line, at, own, reach + LEAN);
  if (to === null) return null;
  const plain = { from: 0, to, total, middle: [line[0], line[1]] as const, usual: () => 0 };
  if (to <= NOTE_OVER) return plain;
  const [x, y] = placeAt(line, at, Math.min(to, total));
  const direction = Math.atan2(y - line[1], x - line[0]);
  const from = Math.max(
    0,
    ...others.map((other) => coveredBy([line[0], line[1]], direction, other, COVERS, to)),
  );
  if (to - from <= NOTE_OVER) return { ...plain, from };
  const looked = Math.min(repeats, ENOUGH);
  return {
    ...plain,
    from,
    middle: placeAt(line, at, (from + to) / 2),
    usual: () => typicalGap(line, at, own, reach + LEAN, to + (looked * (total - to)) / repeats, looked),
  };
}

function placeAt(line: Points, at: Float64Array, u: number): [number, number] {
  let i = 1;
  while (i + 1 < at.length && at[i] < u) i++;
  const t = (u - at[i - 1]) / (at[i] - at[i - 1] || 1);
  const mix = (k: number) => line[k - 2] + t * (line[k] - line[k - 2]);
  return [mix(2 * i), mix(2 * i + 1)];
}

function findingOf(
  seam: number,
  end: 'start' | 'end',
  { from, to, total, middle }: Omit<BareEnd, 'usual'>,
): Finding {
  const length = to - from;
  return {
    level: length > WARN_OVER ? 'warning' : 'note',
    code: 'bare-end',
    message:
      `${lineName(seam)}: a bare stretch of ${length.toFixed(1)} mm at its ${end}; the other side, another ` +
      'repeat length or another manner of ending would cover it',
    seam,
    at: middle,
    along: end === 'start' ? [from, to] : [total - to, total - from],
  };
}
