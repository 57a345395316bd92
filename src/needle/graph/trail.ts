import type { Chain } from '../../fit/fit.js';
import { int32s } from '../../geometry/flat.js';
import { piecesBeyond } from './beyond.js';
import { type Stage, staged, type Units } from './enter-unit.js';
import type { Known, Scratch } from './known.js';
import type { Part } from './part.js';
import type { Passes } from './passes.js';
import type { Layout } from './shape.js';
import { OVER_FINISHED } from './stage.js';
import { startsOf } from './starts.js';

/** An Euler trail: legs in the order they are sewn, leg * 2, plus 1 when it is sewn from `to` to `from`. */
export type Trail = Int32Array;

/** A trail over a part, its legs by their place in the part; `offense` adds up what breaks the hand's order (see Walk.cost). */
export interface StagedTrail {
  readonly steps: Trail;
  readonly offense: number;
  /** whether a leg lies over one that the hand works later */
  readonly isAgainst: boolean;
}

/**
 * Trails over a part that finish each unit before they reach the next but one, and lay crossings in the hand's order. Units that
 * are alike, entered alike, share one search. The best comes first; with `all`, those that start elsewhere and break
 * that order no more follow. Empty when a stage has no such walk.
 */
export function stagedTrails(
  chain: Chain,
  part: Part,
  layout: Layout,
  passes: Passes,
  crossings: Int32Array,
  known: Known,
  scratch: Scratch,
  all: boolean,
): StagedTrail[] {
  const units: Units = { layout, passes, crossings, beyond: piecesBeyond(layout, passes, known), known };
  const first = firstStages(units, startsOf(chain, part, layout, passes, scratch), all);
  const best = first.length > 0 && onward(part, units, first[0]);
  if (!best) return [];
  const out = [best];
  for (let i = 1; all && i < first.length; i++) {
    const other = onward(part, units, first[i]);
    if (other && other.offense <= best.offense) out.push(other);
  }
  return out;
}

/** The trail that begins with a stage; from unit to unit there is one way on. */
function onward(part: Part, units: Units, first: Stage): StagedTrail | null {
  const { passes, layout } = units;
  let total = 0;
  for (let g = 0; g < passes.of.length; g++) {
    const pattern = passes.patterns[passes.of[g]];
    for (let leg = 0; leg < pattern.length; leg++) total += pattern[leg];
  }
  const trail = int32s(total);
  let end = 0;
  let offense = 0;
  let isAgainst = false;
  let stage: Stage | null = first;
  let kind = kindOf(units, 0);
  for (let g = 0; ; g++) {
    if (!stage) return null;
    const own = part.start[g];
    const older = g > 0 ? part.start[g - 1] : 0;
    const { steps } = stage;
    offense += stage.cost;
    // what else breaks the order adds up to less in one unit
    isAgainst ||= stage.cost >= OVER_FINISHED;
    for (let i = 0; i < steps.length; i++) {
      const step = steps[i];
      trail[end++] = step >= 0 ? 2 * own + step : 2 * older + (-1 - step);
    }
    if (g + 1 === layout.shapeOf.length) break;
    const kindNext = kindOf(units, g + 1);
    const key = kind * 2 ** 24 + kindNext;
    let next = stage.next.get(key);
    if (next === undefined) {
      next = staged(units, g + 1, stage);
      stage.next.set(key, next);
    }
    stage = next;
    kind = kindNext;
  }
  return end === total ? { steps: trail, offense, isAgainst } : null;
}

/** The number of all that decides how unit g is walked, apart from how it is entered. */
function kindOf({ layout, passes, crossings, beyond, known }: Units, g: number): number {
  return known.kinds.of(known.sewnShapes.of(layout.shapeOf[g], passes.of[g], 0), crossings[g], beyond[g]);
}

/** Where the trail may start is open between a few nodes: their first stages, the best first, in the hand's order among equals. */
function firstStages(units: Units, starts: readonly number[], all: boolean): readonly Stage[] {
  const { known } = units;
  const key = `${kindOf(units, 0)},${all},${starts}`;
  let stages = known.firstStages.get(key);
  if (!stages) {
    const found: Stage[] = [];
    for (const at of starts) {
      const stage = staged(units, 0, { at, left: [] });
      if (stage) found.push(stage);
      if (!all && stage?.cost === 0) break;
    }
    stages = found.sort((a, b) => a.cost - b.cost);
    known.firstStages.set(key, stages);
  }
  return stages;
}
