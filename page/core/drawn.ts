import type { Block } from '../../src/block/block.js';
import type { Stop, Thread } from '../../src/design/design.js';
import { mutedCloth } from '../../src/draw/shade.js';
import { strandsOf } from '../../src/draw/strands.js';
import { type Dressed, marksOf } from '../../src/dress.js';
import { referenceTo } from '../../src/fit/seam-reference.js';
import { stopsOf } from '../../src/formats/stops.js';
import { boxOf } from '../../src/geometry/box.js';
import { threadWidth } from '../../src/needle/craft.js';
import type { Runs } from '../../src/needle/run.js';
import { placementAsked } from '../../src/placed.js';
import { dressReport } from '../../src/report/dress-report.js';
import { digestOf } from './digest.js';
import type { DrawnBlock, DrawnStop, DrawnThread, Picture } from './messages.js';

/** A dressed block as plain records that the page draws. @param drawn the block as drawn */
export function drawnOf(dressed: Dressed, drawn: Block): Picture {
  return {
    block: drawnBlock(dressed.block),
    stops: dressed.design.stops.map(drawnStop),
    marks: marksOf(dressed),
    report: dressReport(dressed, []),
    ornaments: (dressed.dressing.ornaments ?? []).map((_, k) => middleOf(dressed, k)),
    keptClear: dressed.keepClear.map(({ name, area }) => ({ name, rings: area.rings })),
    placement: placementAsked(drawn.map, dressed.dressing),
    references: drawn.map.seams.map(referenceTo),
  };
}

/** The middle of all that an ornament's threads sew. */
function middleOf({ ornaments }: Dressed, k: number): [number, number] | null {
  const sewn = ornaments.filter(({ ornament }) => ornament === k).map(({ runs }) => runs.xy);
  if (sewn.every(({ length }) => length === 0)) return null;
  const { left, right, top, bottom } = boxOf(sewn);
  return [(left + right) / 2, (top + bottom) / 2];
}

export function drawnBlock({ name, map, existing, origin }: Block): DrawnBlock {
  const patches = map.patches.map(({ id, fabric, boundary, holes }) => ({
    id,
    fill: fabric ?? mutedCloth(id),
    rings: [boundary, ...holes],
  }));
  return {
    name,
    width: map.width,
    height: map.height,
    patches,
    seams: map.seams.map(({ id, points }) => ({ id, points })),
    outline: map.outline?.points ?? null,
    existing: (existing ? stopsOf(existing) : []).map(({ stop, runs }) => ({
      stop,
      runs: runs.map((run) => run.map((value, i) => value - origin[i % 2])),
    })),
  };
}

const drawnStop = ({ title, kind, seams, thread, runs }: Stop): DrawnStop => ({
  title,
  kind,
  seams,
  ...drawnThread(runs, thread),
});

/** Thread as the page's pen takes it, see DrawnThread. */
export function drawnThread(runs: Runs, { hex, weight }: Pick<Thread, 'hex' | 'weight'>): DrawnThread {
  const { xy, cuts } = strandsOf(runs);
  const width = threadWidth(weight);
  return {
    key: `${hex} ${width} ${xy.length} ${digestOf(xy)}`,
    xy,
    cuts: Int32Array.from(cuts.flatMap((of) => [...of, -1])),
    hex,
    width,
  };
}
