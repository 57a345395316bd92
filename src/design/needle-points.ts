import { decodeRecords } from '../formats/dst-records.js';
import { type NeedlePointStop, type NeedlePoints, writeNeedlePoints } from '../formats/needle-points.js';
import { type FileStop, stopsOf } from '../formats/stops.js';
import type { Points } from '../geometry/polyline.js';
import { toSteps } from '../geometry/units.js';
import { type Design, type Stop, stopsInOrder } from './design.js';
import { toRecords } from './write-design.js';

/** The design's needle points as JSON text. */
export function needlePoints(design: Design): string {
  return writeNeedlePoints(needlePointsOf(design));
}

/**
 * Every color stop, those that came with the block included, read back from the very records of the stitch file; so the
 * two agree to the step. The block's frame is laid on the machine's steps: where its origin is no whole number of steps,
 * all points are off by the same fraction of one.
 */
export function needlePointsOf(design: Design): NeedlePoints {
  const made = stopsInOrder(design);
  const origin: [number, number] = [toSteps(design.origin[0]), toSteps(design.origin[1])];
  return { units: '0.1mm', stops: allStops(design).map((stop) => told(stop, made[stop.stop - 1], origin)) };
}

function allStops(design: Design): FileStop[] {
  if (!design.before && !design.after && design.stops.length === 0) return [];
  return stopsOf(decodeRecords(toRecords(design)));
}

function told(
  from: FileStop,
  made: Stop | null | undefined,
  origin: readonly [number, number],
): NeedlePointStop {
  return {
    stop: from.stop,
    title: made?.title ?? 'as it came with the block',
    seams: made?.seams ?? [],
    thread: made?.thread ?? null,
    segments: from.runs.map((run) => inSteps(run, origin)),
  };
}

function inSteps(run: Points, [ox, oy]: readonly [number, number]): [number, number][] {
  return Array.from({ length: run.length / 2 }, (_, i) => [
    toSteps(run[2 * i]) - ox,
    toSteps(run[2 * i + 1]) - oy,
  ]);
}
