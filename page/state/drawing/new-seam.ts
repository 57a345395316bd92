import { batch } from '@preact/signals';
import type { SeamNode } from '../../../src/formats/seam-drawing.js';
import { distance, type Point } from '../../../src/geometry/point.js';
import { told } from '../work.js';
import { aim, chosenLine, draw, drawing, places, takeTool, tool } from './board.js';
import { nodesThrough, withNewLine, withoutLine } from './lines.js';
import { snapped } from './snap.js';
import { SHORTEST, strokeNodes } from './stroke.js';

/** One more place of the line that is being drawn. On a seam or the edge it ends there, and so it does where it is touched twice. */
export function addPlace(p: Point, reach: number): void {
  const now = drawing.value;
  if (!now) return;
  const { at, on } = snapped(p, now, reach);
  const all = places.value;
  const toLast = all.length > 0 ? distance(all[all.length - 1], at) : Number.POSITIVE_INFINITY;
  const next = [...all, at];
  if (all.length >= 3 && distance(all[0], at) <= reach) finish(all, true);
  else if (all.length >= 2 && toLast <= reach) finish(all);
  else if (toLast < SHORTEST) return;
  else if (all.length > 0 && on !== null) finish(next);
  else {
    places.value = next;
    told.value = `Place ${next.length} of the new seam`;
  }
}

/** What was begun is drawn as it is. */
export const finishPlaces = (): void => finish(places.value);

export function takeBackPlace(): void {
  places.value = places.value.slice(0, -1);
}

function finish(all: readonly Point[], closed = false): void {
  places.value = [];
  if (all.length < 2) return;
  const isCurved = tool.value === 'curved';
  // a ring is a line that comes by its first place twice
  const around = closed ? [all[all.length - 1], ...all, all[0]] : all;
  const nodes = nodesThrough(around, isCurved);
  add(closed ? nodes.slice(1, -1) : nodes, closed);
}

/** A straight seam from one place to another. */
export function addStraight(from: Point, to: Point, reach: number): void {
  const now = drawing.value;
  if (!now) return;
  const ends = [snapped(from, now, reach).at, snapped(to, now, reach).at];
  if (distance(ends[0], ends[1]) >= SHORTEST) add(nodesThrough(ends, false), false);
}

/** A curve as the hand drew it. */
export function addStroke(stroke: readonly Point[], reach: number): void {
  const nodes = drawing.value && strokeNodes(stroke, drawing.value, reach);
  if (nodes) add(nodes, false);
}

/** On the edge means on it, and not at whatever ends there, mm. */
const ON_EDGE = 0.05;

/** A seam across the middle of the block, for those who move it by keys from there. */
export function addAcross(): void {
  const now = drawing.value;
  if (!now) return;
  const { width, height } = now;
  const y = Math.round(height / 2);
  const ends = [
    [0, y],
    [width, y],
  ].map((p) => snapped(p as [number, number], now, ON_EDGE).at);
  takeTool('move');
  add(nodesThrough(ends, false), false);
}

function add(nodes: readonly SeamNode[], closed: boolean): void {
  const { drawing: next, id } = withNewLine(drawing.value!, nodes, closed);
  batch(() => {
    draw(next);
    aim.value = null;
    chosenLine.value = id;
  });
  told.value = `Line ${id} is drawn`;
}

export function removeChosen(): void {
  const [now, id] = [drawing.value, chosenLine.value];
  if (!now || !id) return;
  chosenLine.value = null;
  draw(withoutLine(now, id));
  told.value = `Line ${id} is taken out`;
}
