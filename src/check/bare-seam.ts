import Flatbush from 'flatbush';
import type { SeamMap } from '../block/seam-map.js';
import type { Finding } from '../finding.js';
import { cumulativeLength, pointCount } from '../geometry/polyline.js';
import type { Runs } from '../needle/run.js';

/** Bare stretches longer than this are worth a note, and a warning; mm. Common practice. */
const NOTE_OVER = 3;
const WARN_OVER = 6;
/** Places along a seam that are looked at are this far apart, mm. */
const STEP = 0.5;

/** A dressed line and how far its treatment reaches, mm. */
export interface DressedLine {
  readonly seam: number | 'outline';
  readonly reach: number;
  /** its ends were asked to stop short of other treatments, so that bare ends are no surprise */
  readonly short: boolean;
}

/**
 * Stretches of dressed seams that lie further from any thread than their own treatment reaches. Cost: places along the
 * seams times the logarithm of the stitches.
 */
export function bareSeam(map: SeamMap, lines: readonly DressedLine[], threads: readonly Runs[]): Finding[] {
  const near = threadNear(threads);
  return lines.flatMap(({ seam, reach, short }) => {
    const points = seam === 'outline' ? map.outline!.points : map.seams[seam - 1].points;
    const at = cumulativeLength(points);
    const findings: Finding[] = [];
    let bareFrom = -1;
    let last: readonly [number, number] = [points[0], points[1]];
    const close = (u: number) => {
      const bare = bareFrom < 0 ? 0 : u - bareFrom;
      bareFrom = -1;
      if (bare <= NOTE_OVER) return;
      const label = seam === 'outline' ? 'outline' : `seam ${seam}`;
      findings.push({
        level: bare > WARN_OVER && !short ? 'warning' : 'note',
        code: 'bare-seam',
        message:
          `${label}: ${bare.toFixed(1)} mm of the seam stay bare; ends that tuck, another repeat length or a ` +
          'narrower neighbor would cover it',
        seam,
        at: last,
      });
    };
    let i = 1;
    const total = at[pointCount(points) - 1];
    const places = Math.max(1, Math.ceil(total / STEP));
    for (let k = 0; k <= places; k++) {
      const u = (total * k) / places;
      while (i + 1 < at.length && at[i] < u) i++;
      const t = (u - at[i - 1]) / (at[i] - at[i - 1] || 1);
      const x = points[2 * i - 2] + t * (points[2 * i] - points[2 * i - 2]);
      const y = points[2 * i - 1] + t * (points[2 * i + 1] - points[2 * i - 1]);
      if (near(x, y, reach)) close(u);
      else if (bareFrom < 0) bareFrom = u;
      last = [x, y];
    }
    close(total);
    return findings;
  });
}

function threadNear(threads: readonly Runs[]): (x: number, y: number, around: number) => boolean {
  const segments: number[] = [];
  for (const { xy, start } of threads) {
    for (let run = 0; run + 1 < start.length; run++) {
      for (let i = start[run]; i + 1 < start[run + 1]; i++) {
        segments.push(xy[2 * i], xy[2 * i + 1], xy[2 * i + 2], xy[2 * i + 3]);
      }
    }
  }
  if (segments.length === 0) return () => false;
  const index = new Flatbush(segments.length / 4);
  for (let s = 0; s < segments.length; s += 4) {
    const [x0, x1] = [segments[s], segments[s + 2]];
    const [y0, y1] = [segments[s + 1], segments[s + 3]];
    index.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
  }
  index.finish();
  const isNear = (s: number, x: number, y: number, around: number) => {
    const [x0, y0] = [segments[4 * s], segments[4 * s + 1]];
    const [dx, dy] = [segments[4 * s + 2] - x0, segments[4 * s + 3] - y0];
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / square)) : 0;
    return Math.hypot(x0 + t * dx - x, y0 + t * dy - y) <= around;
  };
  return (x, y, around) => {
    let found = false;
    // The filter sees candidates one by one; once one is near enough the rest need no look.
    index.search(x - around, y - around, x + around, y + around, (s) => {
      found ||= isNear(s, x, y, around);
      return false;
    });
    return found;
  };
}
