import type { SeamMap } from '../block/seam-map.js';
import type { Chain } from '../fit/fit.js';
import { lineChain } from '../fit/plain-line.js';
import type { Hooping } from '../formats/dressing.js';
import { boxOf } from '../geometry/box.js';
import type { Point } from '../geometry/point.js';
import { cumulativeLength, fromPoints, type Points, pointAt, pointCount } from '../geometry/polyline.js';
import { pointAtLength } from '../geometry/polyline-part.js';
import { craftFor } from '../needle/craft.js';
import type { Runs } from '../needle/run.js';
import { sewChains, Workbench } from '../needle/sew-chain.js';
import type { Stop, StopKind, Thread } from './design.js';

/** Stitches of an outline to lay a block on, mm. Common practice. */
const PLACING = 3;
/** Stitches that are pulled out again, mm. Common practice: 5 to 6. */
const BASTING = 5.5;
/** The needle comes to a place from this far beside it, mm: a stitch has a length. */
const APPROACH = 1;
/** These stops are sewn in whatever is at hand and pulled out or covered later. */
const ANY_THREAD: Thread = { name: 'Any thread', hex: '#8a8a86', weight: 'No. 40' };

/**
 * The stops of hooping a finished block, in the order they are sewn: the outline on the stabilizer, then, with the block
 * laid in it, the box that holds it, then the places that show whether it lies right. Each kind is a stop of its own.
 */
export function hoopingStops(
  map: SeamMap,
  { outline = false, basting, align = [], crosses = false }: Hooping,
): Stop[] {
  const bench = new Workbench();
  const sewn = (chains: readonly Chain[]): Runs => sewChains(chains, craftFor(ANY_THREAD.weight), bench).runs;
  const stop = (kind: StopKind, title: string, runs: Runs): Stop => ({
    title,
    kind,
    seams: [],
    thread: ANY_THREAD,
    runs,
  });
  const stops: Stop[] = [];
  if (outline)
    stops.push(stop('placement', 'Outline on the stabilizer', sewn([around(outlineOf(map), PLACING)])));
  if (basting !== undefined)
    stops.push(stop('basting', 'Basting box', sewn([around(boxBeside(map, basting), BASTING)])));
  if (align.length > 0) {
    stops.push(
      crosses
        ? stop('alignment', 'Crosses to align by', sewn(align.flatMap(crossAt)))
        : stop('alignment', 'Places to align by', holesAt(align)),
    );
  }
  return stops;
}

/** The outline of the block, or of its frame where its lines close nothing. */
function outlineOf({ outline, width, height }: SeamMap): Points {
  return outline?.points ?? boxPoints(0, 0, width, height);
}

/** A box round the block, `away` mm outside. */
function boxBeside(map: SeamMap, away: number): Points {
  const { left, top, right, bottom } = boxOf([outlineOf(map)]);
  return boxPoints(left - away, top - away, right + away, bottom + away);
}

const boxPoints = (left: number, top: number, right: number, bottom: number): Points =>
  fromPoints([
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
    [left, top],
  ]);

/** Even stitches round a closed line, at most `stitch` mm long, with a hole on each of its corners. */
function around(line: Points, stitch: number): Chain {
  const at = cumulativeLength(line);
  const bounds = [0, ...cornersOf(line).map((i) => at[i]), at[at.length - 1]];
  const nodes: number[] = [];
  bounds.slice(1).forEach((to, k) => {
    const from = bounds[k];
    const pieces = Math.max(1, Math.ceil((to - from) / stitch - 1e-9));
    for (let i = 0; i < pieces; i++)
      nodes.push(...pointAtLength(line, at, from + ((to - from) * i) / pieces));
  });
  return lineChain(nodes, true, 1);
}

/** A line turns sharply at these of its points. */
const SHARP = Math.cos((25 * Math.PI) / 180);

function cornersOf(line: Points): number[] {
  const corners: number[] = [];
  for (let i = 1; i + 1 < pointCount(line); i++) {
    const [a, b, c] = [pointAt(line, i - 1), pointAt(line, i), pointAt(line, i + 1)];
    const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
    if (ux * vx + uy * vy < SHARP * Math.hypot(ux, uy) * Math.hypot(vx, vy)) corners.push(i);
  }
  return corners;
}

/** A single hole at each place. */
function holesAt(places: readonly Point[]): Runs {
  return {
    xy: Float64Array.from(places.flatMap(([x, y]) => [x - APPROACH, y, x, y])),
    start: Int32Array.from({ length: places.length + 1 }, (_, i) => 2 * i),
  };
}

/** Two long stitches that cross at a place. */
function crossAt([x, y]: Point): Chain[] {
  const half = BASTING / 2;
  return [lineChain([x - half, y, x + half, y], false, 1), lineChain([x, y - half, x, y + half], false, 1)];
}
