import type { Unit } from '../stitches/stitch.js';
import type { Layer } from './lay.js';
import { threadsOverNodes } from './on-thread.js';
import type { Place, Placing, UnitRun } from './unit-places.js';

/** How many units after it may share a node of a unit: from one to the next as `joins` hand it on. */
function handedOn({ joins }: Unit): number {
  const to = new Map(joins);
  let most = 0;
  for (const [from] of joins) {
    let units = 0;
    for (let node: number | undefined = from; node !== undefined && units <= joins.length; units++) {
      node = to.get(node);
    }
    most = Math.max(most, units - 1);
  }
  return most;
}

/**
 * For each unit the one before it that it repeats, moved along, or -1. Both, and the units before them, must stand alike:
 * in one run, to one hand, on a straight.
 */
export function repeatsBefore(
  { closed, alternate, uneven }: Placing,
  places: readonly Place[],
  lay: Layer,
): (index: number) => number {
  const period = alternate ? 2 : 1;
  const last = closed ? places.length - 2 : places.length - 1;
  let run: UnitRun | null = null;
  let first = 0;
  let apart = 1;
  /** units before it whose threads a shared node of it may lie on */
  let leaning = 0;
  /** from this unit on, up to the one asked for last, all lie plainly on the line */
  let plainFrom = 0;
  return (index) => {
    const place = places[index];
    if (place.run !== run) {
      run = place.run;
      first = index;
      apart = Math.max(1, handedOn(run.unit));
      leaning = threadsOverNodes(run.unit).some((thread) => thread) ? apart : 0;
      plainFrom = index;
    }
    if (uneven || !isPlain(place, lay)) {
      plainFrom = index + 1;
      return -1;
    }
    const like = index - period;
    // the first unit of a run has other neighbors, and so have those that share what it laid; the last of a ring closes it
    return like - period >= first + apart && like - leaning >= plainFrom && index <= last ? like : -1;
  };
}

function isPlain({ start, length, before, after, run }: Place, lay: Layer): boolean {
  if (before !== length || after !== length) return false;
  const { overhang } = run.unit;
  const stretch = length / run.unit.length;
  return lay.isPlain(start - overhang.start * stretch, start + length + overhang.end * stretch);
}
