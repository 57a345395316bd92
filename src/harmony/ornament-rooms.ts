import { roomyPatches } from '../asked/roomy-patches.js';
import type { LineId } from '../block/meetings.js';
import type { Patch, SeamMap } from '../block/seam-map.js';
import { contrast, SEEN } from '../color/contrast.js';
import { type Clearance, clearOfArea, clearOfLines } from '../fit/clear-circle.js';
import type { PlacedOrnament, ThreadChoice } from '../formats/dressing.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { insideRings } from '../geometry/area.js';
import type { Circle } from '../geometry/enclosing-circle.js';
import type { Points } from '../geometry/polyline.js';

/** One patch in so many gets an ornament: bare cloth is what sets them off. Common practice. */
const ONE_IN = 3;
/** Of the clear room an ornament takes this share, and is wanted no larger than this, mm. */
const SHARE_OF_ROOM = 0.72;
const LARGEST = 24;
/** Where there is no room for this much, a patch stays bare, mm. */
const SMALLEST = 9;
/** The room is looked for roughly, mm: where an ornament really stands is found when the thread lies. */
const ROUGHLY = 1;
/** Of its width a treatment may reach this share to one side of its seam, mm; an edge lies all on one side of the outline. */
const TO_ONE_SIDE = 0.75;
/** A patch on which no thread shows is worth as much as one with this share of its room. */
const LOST = 0.4;

export interface RoomQuestion {
  readonly map: SeamMap;
  /** width of what lies along each line, mm */
  readonly widths: ReadonlyMap<LineId, number>;
  readonly palette: readonly ThreadChoice[];
  /** ornaments that stand already */
  readonly kept: readonly PlacedOrnament[];
  readonly keepClear: readonly KeptArea[];
}

/** Where an ornament may stand. */
export interface Room {
  readonly patch: Patch;
  readonly circle: Circle;
  /** wanted size of what stands there, mm */
  readonly size: number;
}

/** The patches with the most clear cloth on which a thread shows, the roomiest first, none side by side. */
export function ornamentRooms({ map, widths, palette, kept, keepClear }: RoomQuestion): Room[] {
  const free = map.patches.filter(
    ({ boundary, holes }) => !kept.some((one) => stands(one, [boundary, ...holes])),
  );
  const rooms = roomyPatches({ patches: free }, bandsOn(map, widths, keepClear), {
    margin: 1,
    precision: ROUGHLY,
  })
    .map(({ patch, circle }) => ({
      patch,
      circle,
      size: Math.min(LARGEST, SHARE_OF_ROOM * 2 * circle.radius),
    }))
    .filter(({ size }) => size >= SMALLEST)
    .map((room) => ({ ...room, worth: room.circle.radius * (showsOn(palette, room.patch) ? 1 : LOST) }))
    .sort((a, b) => b.worth - a.worth || a.patch.id - b.patch.id);
  const most = Math.max(0, Math.round(map.patches.length / ONE_IN) - kept.length);
  const beside = sideBySide(map);
  const taken = new Set<number>();
  const apart: Room[] = [];
  for (const room of rooms) {
    if (taken.has(room.patch.id)) continue;
    for (const patch of beside[room.patch.id - 1]) taken.add(patch);
    apart.push(room);
  }
  return apart.slice(0, most);
}

/** For each patch what will lie on it: treatments along its seams and its outline, and what is kept clear. */
function bandsOn(
  map: SeamMap,
  widths: ReadonlyMap<LineId, number>,
  keepClear: readonly KeptArea[],
): (patch: Patch) => readonly Clearance[] {
  const bands = map.seams.map(({ id, points }) =>
    clearOfLines([asLines(points)], TO_ONE_SIDE * (widths.get(id) ?? 0)),
  );
  const edge = widths.get('outline');
  const everywhere = [
    ...keepClear.map(({ area }) => clearOfArea(area, 1)),
    ...(map.outline && edge !== undefined ? [clearOfLines([asLines(map.outline.points)], edge)] : []),
  ];
  const borders = map.patches.map(() => new Set<number>());
  for (const { id, sides } of map.seams) {
    for (const { left, right } of sides) {
      for (const patch of [left, right]) if (patch !== null) borders[patch - 1].add(id);
    }
  }
  return ({ id }) => [...[...borders[id - 1]].map((seam) => bands[seam - 1]), ...everywhere];
}

/** For each patch those that share a seam with it. */
function sideBySide({ patches, seams }: SeamMap): Set<number>[] {
  const beside = patches.map(() => new Set<number>());
  for (const { left, right } of seams.flatMap(({ sides }) => sides)) {
    if (left === null || right === null) continue;
    beside[left - 1].add(right);
    beside[right - 1].add(left);
  }
  return beside;
}

const showsOn = (palette: readonly ThreadChoice[], { fabric }: Patch): boolean =>
  fabric === null || palette.some(({ hex }) => contrast(hex, fabric) >= SEEN);

const stands = ({ at, patch }: PlacedOrnament, rings: readonly Points[]): boolean => {
  const spot = at ?? (typeof patch === 'object' ? patch.at : null);
  return spot !== null && insideRings(spot, rings);
};

const asLines = (points: Points) => ({ xy: points, start: Int32Array.of(0, points.length / 2) });
