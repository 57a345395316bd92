import Flatbush from 'flatbush';
import type { Block } from '../block/block.js';
import type { Dressing, KeepClear } from '../formats/dressing.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { stopsOf } from '../formats/stops.js';
import { boxOf } from '../geometry/box.js';
import { convexHull } from '../geometry/convex-hull.js';
import { roundDisc } from '../geometry/disc.js';
import { groupsOf } from '../geometry/groups.js';
import { fromPoints, type Points } from '../geometry/polyline.js';
import { InputError } from '../input-error.js';
import { Slips, within } from './slips.js';

/** Runs nearer to each other than this are one piece, mm: letters of a word apart, the strokes of a letter together. */
const NEAR = 2;

/**
 * All that stays clear on a block: what its drawing marks and what the dressing names.
 * @throws InputError when the dressing names stops that the block does not have
 */
export function keptAreas(block: Block, { keepClear = [] }: Dressing): KeptArea[] {
  const slips = new Slips();
  const named = keepClear.flatMap((one, k) =>
    slips.caught(() => within(`keepClear ${k + 1}`, ['keepClear', k], () => areasOf(block, one))),
  );
  slips.tell();
  return [...(block.keepClear ?? []), ...named];
}

function areasOf(block: Block, { name, polygon, circle, stops }: KeepClear): KeptArea[] {
  if (polygon) return [areaOf(name, fromPoints([...polygon, polygon[0]]))];
  if (circle) return [areaOf(name, roundDisc(circle.at, circle.radius))];
  return [{ name, area: { rings: sewnAlready(block, stops ?? []), rule: 'nonzero' } }];
}

const areaOf = (name: string, ring: Points): KeptArea => ({ name, area: { rings: [ring], rule: 'nonzero' } });

/** What lies in stops that came with the block, as the hulls of its pieces. */
function sewnAlready({ existing, origin, name }: Block, stops: readonly number[]): Points[] {
  if (!existing) {
    throw new InputError(
      'no-stops',
      '',
      `${name} is a drawing and has no color stops`,
      'give a polygon or a circle instead of stops',
    );
  }
  const all = stopsOf(existing);
  const runs = stops.flatMap((stop) => {
    const found = all[stop - 1];
    if (found) return found.runs.filter((run) => run.length > 2);
    throw new InputError('no-such-stop', '', `there is no stop ${stop}`, `the file has 1 to ${all.length}`);
  });
  if (runs.length === 0) {
    const which = stops.length === 1 ? `stop ${stops[0]}` : `stops ${stops.join(', ')}`;
    throw new InputError('empty-stop', '', `nothing is sewn in ${which}`, 'name stops that sew');
  }
  const moved = runs.map((run) => run.map((value, i) => value - origin[i % 2]));
  return pieces(moved).map((piece) => convexHull(piece));
}

/** The points of runs that lie close together, piece by piece. Cost: n log n in the runs. */
function pieces(runs: readonly Points[]): Points[] {
  const boxes = runs.map((run) => boxOf([run]));
  const index = new Flatbush(runs.length);
  for (const { left, top, right, bottom } of boxes) index.add(left, top, right, bottom);
  index.finish();
  const groups = groupsOf(runs.length);
  boxes.forEach(({ left, top, right, bottom }, i) => {
    for (const k of index.search(left - NEAR, top - NEAR, right + NEAR, bottom + NEAR)) groups.join(i, k);
  });
  const members = new Map<number, number[]>();
  runs.forEach((run, i) => {
    const points = members.get(groups.of(i)) ?? [];
    for (const value of run) points.push(value);
    members.set(groups.of(i), points);
  });
  return [...members.values()].map((points) => Float64Array.from(points));
}
