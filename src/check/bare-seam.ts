import type { SeamMap } from '../block/seam-map.js';
import { type Finding, lineName } from '../finding.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { areaIndex } from '../geometry/area-index.js';
import { type Box, boxesMeet, boxOf } from '../geometry/box.js';
import { type LineIndex, lineIndex } from '../geometry/line-index.js';
import { cumulativeLength, type Points } from '../geometry/polyline.js';
import type { Runs } from '../needle/run.js';
import { type Along, openStretches } from './open-stretches.js';

/** Bare stretches longer than this are worth a note, and a warning; mm. Common practice. */
export const NOTE_OVER = 3;
export const WARN_OVER = 6;
/** Where a seam is bare it is looked at in steps of this, mm. */
const STEP = 0.5;
/** Thread is looked for this far around first, mm. */
const NEAR = 1.5;

/** A dressed line and how far its treatment reaches, mm. */
export interface DressedLine {
  readonly seam: number | 'outline';
  readonly reach: number;
  /** its ends were asked to stop short of other treatments, so that bare ends are no surprise */
  readonly short: boolean;
  /** from where to where it is looked at, mm along it; from end to end when not given */
  readonly between?: Along;
  /** thread of its own, which mostly covers it all */
  readonly own?: readonly Runs[];
}

/**
 * Stretches of dressed seams that lie further from any thread than their own treatment reaches, but for those that come up
 * to an area that is kept clear: the fit tells of them. A line's own thread is looked at first; only what it may leave open
 * is asked of all thread around. Thread that is d away covers the next reach - d mm for certain, so that covered seam is passed
 * in long steps. Cost: linear in the stitches, and where seams lie open the length of seam times the logarithm of the
 * stitches around.
 */
export function bareSeam(
  map: SeamMap,
  lines: readonly DressedLine[],
  threads: readonly Runs[],
  keepClear: readonly KeptArea[] = [],
): Finding[] {
  const areas = keepClear.map(({ area }) => areaIndex(area));
  const isKept = (x: number, y: number, reach: number) => {
    const around = reach + NEAR;
    return areas.some((away) => away(x, y, around) < around);
  };
  let boxes: Box[] | null = null;
  const around = (points: Points, reach: number): LineIndex => {
    boxes ??= threads.map(({ xy }) => boxOf([xy]));
    const { left, top, right, bottom } = boxOf([points]);
    const box = { left: left - reach, top: top - reach, right: right + reach, bottom: bottom + reach };
    return lineIndex(threads.filter((_, i) => boxesMeet(boxes![i], box)));
  };
  return lines.flatMap((line) => {
    const { seam, reach, own = [], between } = line;
    const points = seam === 'outline' ? map.outline!.points : map.seams[seam - 1].points;
    const at = cumulativeLength(points);
    const open = openStretches(points, at, between ?? [0, at[at.length - 1]], reach, own, NOTE_OVER);
    if (open.length === 0) return [];
    const index = around(points, reach);
    return open
      .flatMap((stretch) => bareStretches(points, at, stretch, reach, index, isKept))
      .map((bare) => findingOf(line, bare));
  });
}

interface BareStretch {
  /** mm along the line */
  readonly from: number;
  readonly to: number;
  /** its middle */
  readonly at: readonly [number, number];
}

function bareStretches(
  points: Points,
  at: Float64Array,
  [first, last]: Along,
  reach: number,
  index: LineIndex,
  isKept: (x: number, y: number, reach: number) => boolean,
): BareStretch[] {
  let i = 1;
  const place = (u: number): readonly [number, number] => {
    while (i > 1 && at[i - 1] > u) i--;
    while (i + 1 < at.length && at[i] < u) i++;
    const t = (u - at[i - 1]) / (at[i] - at[i - 1] || 1);
    return [
      points[2 * i - 2] + t * (points[2 * i] - points[2 * i - 2]),
      points[2 * i - 1] + t * (points[2 * i + 1] - points[2 * i - 1]),
    ];
  };
  const found: BareStretch[] = [];
  let bareFrom = -1;
  // what is left bare next to a kept area is part of what the fit has told
  let isBesideKept = false;
  const close = (u: number, atKept: boolean) => {
    const length = bareFrom < 0 || isBesideKept || atKept ? 0 : u - bareFrom;
    if (length > NOTE_OVER) found.push({ from: bareFrom, to: u, at: place((bareFrom + u) / 2) });
    bareFrom = -1;
    isBesideKept = atKept;
  };
  for (let u = first; u < last; ) {
    const [x, y] = place(u);
    // Thread lies near nearly everywhere: a small look around finds it among fewer stitches.
    const near = index.distance(x, y, Math.min(NEAR, reach));
    const away = near <= reach ? near : index.distance(x, y, reach);
    if (away <= reach) close(u, false);
    else if (isKept(x, y, reach)) close(u, true);
    else if (bareFrom < 0) bareFrom = u;
    u += away <= reach ? Math.max(STEP, reach - away) : STEP;
  }
  close(last, false);
  return found;
}

function findingOf({ seam, short }: DressedLine, { from, to, at }: BareStretch): Finding {
  const length = to - from;
  return {
    level: length > WARN_OVER && !short ? 'warning' : 'note',
    code: 'bare-seam',
    message:
      `${lineName(seam)}: ${length.toFixed(1)} mm of the seam stay bare; ends that ` +
      'tuck, another repeat length or a narrower neighbor would cover it',
    seam,
    at,
    along: [from, to],
  };
}
