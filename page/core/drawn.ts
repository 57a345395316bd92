import { isTurnedOver } from '../../src/asked/lines.js';
import type { Block } from '../../src/block/block.js';
import type { Stop, Thread } from '../../src/design/design.js';
import { runsBetweenTies } from '../../src/draw/dressed-picture.js';
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
import { accentPlaces } from './accent-places.js';
import { digestOf } from './digest.js';
import type { DrawnBlock, DrawnRibbon, DrawnStop, DrawnThread, Picture } from './messages.js';

/**
 * A dressed block as plain records that the page draws.
 *
 * @param drawn the block as drawn
 * @param known threads by their keys, as they were drawn before: those of the block take their place
 */
export function drawnOf(dressed: Dressed, drawn: Block, known = new Map<string, DrawnThread>()): Picture {
  const { map } = dressed.block;
  const stops = dressed.design.stops.map((stop) => drawnStop(stop, known));
  known.clear();
  for (const stop of stops) known.set(stop.key, stop);
  return {
    block: drawnBlock(dressed.block),
    stops,
    marks: marksOf(dressed),
    laid: ribbonsOf(dressed, stops),
    report: dressReport(dressed, []),
    ornaments: (dressed.dressing.ornaments ?? []).map((_, k) => middleOf(dressed, k)),
    keptClear: dressed.keepClear.map(({ name, area }) => ({ name, rings: area.rings.map(toMicrons) })),
    placement: placementAsked(drawn.map, dressed.dressing),
    accents: dressed.lines.flatMap(({ fit }) =>
      accentPlaces(fit, (fit.seam === 'outline' ? map.outline! : map.seams[fit.seam - 1]).points),
    ),
    turnedOver: dressed.lines.flatMap(({ fit: { seam }, treatment }) =>
      isTurnedOver(map, dressed.dressing.treatments[treatment], seam) ? [seam] : [],
    ),
    references: drawn.map.seams.map(referenceTo),
  };
}

/** What is laid, each on the placement line that was sewn for it. @param drawn the stops, as they are drawn */
function ribbonsOf({ lines, dressing, design }: Dressed, drawn: readonly DrawnStop[]): DrawnRibbon[] {
  return lines.flatMap(({ treatment, layers }) => {
    const { laid } = dressing.treatments[treatment];
    return layers.flatMap(({ kind, runs }): DrawnRibbon[] => {
      const stop = design.stops.findIndex((one) => one.runs === runs);
      if (kind !== 'placement' || !laid || stop < 0) return [];
      const { width, hex } = laid;
      return [{ on: drawn[stop].key, lines: runsBetweenTies(runs).map(toMicrons), width, hex }];
    });
  });
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
    rings: [boundary, ...holes].map(toMicrons),
  }));
  const block = {
    name,
    width: map.width,
    height: map.height,
    patches,
    seams: map.seams.map(({ id, points }) => ({ id, points: toMicrons(points) })),
    outline: map.outline ? toMicrons(map.outline.points) : null,
    existing: (existing ? stopsOf(existing) : []).map(({ stop, runs }) => ({
      stop,
      runs: runs.map((run) => toMicrons(run.map((value, i) => value - origin[i % 2]))),
    })),
  };
  return { key: keyOfBlock(block), ...block };
}

function keyOfBlock({ width, height, patches, seams, outline, existing }: Omit<DrawnBlock, 'key'>): string {
  const lines = [
    ...patches.flatMap(({ rings }) => rings),
    ...seams.map(({ points }) => points),
    ...(outline ? [outline] : []),
    ...existing.flatMap(({ runs }) => runs),
  ];
  const counts = lines.map(({ length }) => length);
  const all = new Float64Array(counts.reduce((sum, count) => sum + count, 0));
  let at = 0;
  for (const line of lines) {
    all.set(line, at);
    at += line.length;
  }
  const numbers = digestOf(Float64Array.from([width, height, ...counts]));
  return `block ${numbers} ${digestOf(all)} ${patches.map(({ fill }) => fill).join('')}`;
}

const drawnStop = (
  { title, kind, seams, thread, runs }: Stop,
  known: Map<string, DrawnThread>,
): DrawnStop => ({
  ...drawnThread(runs, thread, known),
  title,
  kind,
  seams,
});

/** Thread as the page's pen takes it, see DrawnThread. @param known threads drawn before, by their keys */
export function drawnThread(
  runs: Runs,
  { hex, weight }: Pick<Thread, 'hex' | 'weight'>,
  known?: ReadonlyMap<string, DrawnThread>,
): DrawnThread {
  const width = threadWidth(weight);
  // by micrometers: engines differ in the last bits of a sine, and what was dressed by another is the same picture
  const key = `${hex} ${width} ${runs.xy.length} ${digestOf(toMicrons(runs.xy))} ${digestOf(Float64Array.from(runs.start))}`;
  const before = known?.get(key);
  if (before) return before;
  const { xy, cuts } = strandsOf(runs);
  return { key, xy: toMicrons(xy), cuts: Int32Array.from(cuts.flatMap((of) => [...of, -1])), hex, width };
}

/** The nearest whole micrometers: finer than any screen shows, and few enough digits to be kept in the page. */
const toMicrons = (points: Float64Array): Float64Array =>
  points.map((value) => Math.round(value * 1000) / 1000 + 0);
