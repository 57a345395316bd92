import type { LineId } from '../../block/meetings.js';
import type { SeamMap } from '../../block/seam-map.js';
import { patchFinder } from '../../check/contrast/cloth-beside.js';
import {
  type Beside,
  type Place,
  type Verdict,
  verdictOfContrast,
} from '../../check/contrast/thread-contrast.js';
import { type ThreadChoice, threadColors } from '../../formats/dressing.js';
import { enclosingCircle } from '../../geometry/enclosing-circle.js';
import { cumulativeLength, type Points } from '../../geometry/polyline.js';
import { partOf, pointAtLength } from '../../geometry/polyline-part.js';
import type { Runs } from '../../needle/run.js';

/** A thread of a line, or of an ornament where that is null, and how it shows stretch by stretch. */
export interface ShownContrast {
  readonly line: LineId | null;
  /** the same for all parts of an ornament that are worked in one thread of the dressing */
  readonly use: string;
  readonly thread: ThreadChoice;
  readonly runs: Runs;
  readonly places: readonly Place[];
}

/** One thread on one fabric: on one side of a stretch of a line, or round an ornament. */
export interface ContrastStretch {
  readonly line: LineId | null;
  readonly thread: ThreadChoice;
  readonly patch: number;
  readonly ratio: number;
  readonly verdict: Exclude<Verdict, 'unknown'>;
  /** the stretch of the line; a circle round the ornament */
  readonly part: Points;
  /** of the line, in its direction as it is drawn; of the circle the outside */
  readonly hand: 'left' | 'right';
  /** 0 for the first thread of a line, 1 for the next that has other colors ... */
  readonly lane: number;
}

/** How far into a patch it is looked for which one it is, mm. */
const INTO = 0.5;
/** Of the ring round an ornament, mm from its thread, and how many points it has. */
const ROUND = 1;
const RING_POINTS = 48;

/**
 * What was measured of all threads, each stretch, fabric and color once, in the order of lines. Linear in the stretches and the
 * points of their lines.
 */
export function contrastStretches(map: SeamMap, contrasts: readonly ShownContrast[]): ContrastStretch[] {
  const lanes = new Map<LineId, string[]>();
  const told = new Set<string>();
  const along = new Map<LineId, Float64Array>();
  const edges = contrasts.some(({ line }) => line === 'outline') ? outlineStretches(map) : [];
  const parts = new Map<string, Runs[]>();
  for (const { line, use, runs } of contrasts) {
    if (line === null) parts.set(use, [...(parts.get(use) ?? []), runs]);
  }
  return contrasts.flatMap(({ line, use, thread, places }): ContrastStretch[] => {
    const colors = threadColors(thread).join(' ');
    if (line === null) {
      const ring = ringRound(parts.get(use)!);
      return places.flatMap(({ sides }, nth) =>
        sides.flatMap((side): ContrastStretch[] => {
          const key = `${use} ${side.patch}`;
          if (told.has(key)) return [];
          told.add(key);
          return [{ ...shown(side), line, thread, part: ring, hand: 'left', lane: nth }];
        }),
      );
    }
    const points = line === 'outline' ? map.outline!.points : map.seams[line - 1].points;
    const at = along.get(line) ?? cumulativeLength(points);
    along.set(line, at);
    const there = lanes.get(line) ?? [];
    lanes.set(line, there);
    if (!there.includes(colors)) there.push(colors);
    const lane = there.indexOf(colors);
    const stretch = (side: Beside, hand: 'left' | 'right', from: number, to: number): ContrastStretch[] => {
      const key = `${line} ${lane} ${hand} ${from}`;
      if (told.has(key)) return [];
      told.add(key);
      return [{ ...shown(side), line, thread, part: partOf(points, at, from, to), hand, lane }];
    };
    return places.flatMap(({ from, to, sides }) =>
      sides.flatMap((side) =>
        side.hand !== null && from !== undefined && to !== undefined
          ? stretch(side, side.hand, from, to)
          : edges.flatMap((edge) =>
              edge.patch === side.patch ? stretch(side, edge.hand, edge.from, edge.to) : [],
            ),
      ),
    );
  });
}

const shown = ({ patch, contrast }: Beside) => ({
  patch,
  ratio: contrast,
  verdict: verdictOfContrast(contrast),
});

interface EdgeStretch {
  readonly patch: number;
  readonly hand: 'left' | 'right';
  readonly from: number;
  readonly to: number;
}

/** The outline from junction to junction, with the patch that lies within. */
function outlineStretches({ outline, junctions, patches }: SeamMap): EdgeStretch[] {
  if (!outline) return [];
  const at = cumulativeLength(outline.points);
  const long = at[at.length - 1];
  const cuts = junctions.flatMap(({ arms }) =>
    arms.flatMap(({ seam, u }) => (seam === 'outline' && u > 0 && u < long ? [u] : [])),
  );
  const ends = [...new Set([0, ...cuts, long])].sort((a, b) => a - b);
  const patchAt = patchFinder(patches);
  return ends.slice(1).flatMap((to, i): EdgeStretch[] => {
    const from = ends[i];
    const half = Math.min(INTO, (to - from) / 4);
    const middle = (from + to) / 2;
    const [ax, ay] = pointAtLength(outline.points, at, middle - half);
    const [bx, by] = pointAtLength(outline.points, at, middle + half);
    const long = Math.hypot(bx - ax, by - ay) || 1;
    const [nx, ny] = [((by - ay) / long) * INTO, ((ax - bx) / long) * INTO];
    const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
    const [left, right] = [patchAt(x + nx, y + ny), patchAt(x - nx, y - ny)];
    if (left !== null) return [{ patch: left, hand: 'left', from, to }];
    return right === null ? [] : [{ patch: right, hand: 'right', from, to }];
  });
}

/** A circle round all parts, clockwise as drawn, so that the left of it is the outside. */
function ringRound(parts: readonly Runs[]): Points {
  const { x, y, radius } = enclosingCircle(Float64Array.from(parts.flatMap(({ xy }) => [...xy])));
  const ring = new Float64Array(2 * (RING_POINTS + 1));
  for (let i = 0; i <= RING_POINTS; i++) {
    const way = (2 * Math.PI * i) / RING_POINTS - Math.PI / 2;
    ring[2 * i] = x + (radius + ROUND) * Math.cos(way);
    ring[2 * i + 1] = y + (radius + ROUND) * Math.sin(way);
  }
  return ring;
}
