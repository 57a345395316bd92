import type { Patch, SeamMap } from '../block/seam-map.js';
import { clearOfArea, clearOfLines, largestClearCircle } from '../fit/clear-circle.js';
import type { PlacedOrnament, ThreadChoice } from '../formats/dressing.js';
import type { KeptArea } from '../formats/line-drawing.js';
import { insideRings } from '../geometry/area.js';
import type { Circle } from '../geometry/enclosing-circle.js';
import { noise } from '../geometry/noise.js';
import type { Points } from '../geometry/polyline.js';
import type { Dictionary } from '../stitches/dictionary.js';
import type { Ornament } from '../stitches/stitch.js';
import { choose } from './choose.js';
import { contrast, SEEN } from './contrast.js';
import type { LineId } from './meetings.js';
import { DEFAULT_PASSES } from './passes.js';
import { puzzleOf } from './puzzle.js';
import { keyOf, numbered } from './taste.js';
import { threadOrder } from './thread-choice.js';

/** One patch in so many gets an ornament: bare cloth is what sets them off. Common practice. */
const ONE_IN = 3;
/** Of the clear room an ornament takes this share, and is wanted no larger than this, mm. */
const SHARE_OF_ROOM = 0.72;
const LARGEST = 24;
/** Where there is no room for this much, a patch stays bare, mm. */
const SMALLEST = 9;
/** The room is looked for roughly, mm: where an ornament really stands is found when the thread lies. */
const ROUGHLY = 1;
/** A patch on which no thread shows is worth as much as one with this share of its room. */
const LOST = 0.4;
/** What an ornament far from its usual size costs for each factor e, squared; a second use of it, and of its family; and chance. */
const UNUSUAL_SIZE = 1.5;
const AGAIN = 1.2;
const FAMILY_AGAIN = 0.8;
const CHANCE = 0.8;
/** A flower leans up to so far, degrees: all upright look stamped. */
const LEAN = 25;
/** Figures longer than broad by this lie along their patch. */
const LONG = 1.4;

export interface OrnamentQuestion {
  readonly map: SeamMap;
  readonly dictionary: Dictionary;
  /** width of what lies along each line, mm */
  readonly widths: ReadonlyMap<LineId, number>;
  readonly palette: readonly ThreadChoice[];
  /** ornaments that stand already */
  readonly kept: readonly PlacedOrnament[];
  readonly seed: number;
  readonly keepClear: readonly KeptArea[];
}

/** Ornaments for the roomiest patches, no two alike as far as the library goes, none in patches side by side. */
export function chosenOrnaments(question: OrnamentQuestion): PlacedOrnament[] {
  const { map, dictionary, palette, seed } = question;
  const rooms = roomyPatches(question);
  const shelf = [...dictionary.ornaments.values()];
  const offers = rooms.map(({ size }) => shelf.flatMap((one, k) => (canBe(one, size) ? [k] : [])));
  const served = rooms.filter((_, i) => offers[i].length > 0);
  if (served.length === 0) return [];
  const own = served.map(({ patch, size }) =>
    shelf.map(
      (one) =>
        UNUSUAL_SIZE * Math.log(sizeFor(one, size) / sizeOf(one).default) ** 2 +
        CHANCE * noise(seed, 7011, patch.id, keyOf(one.name)),
    ),
  );
  const families = numbered(shelf.map(({ family }) => family));
  const puzzle = puzzleOf({
    neighbors: served.map(() => []),
    offers: offers.filter((list) => list.length > 0),
    marks: shelf.map((_, k) => [k]),
  });
  const { chosen } = choose(puzzle, new Int32Array(served.length).fill(-1), () => {
    const uses = new Int32Array(shelf.length);
    const ofFamily = new Int32Array(shelf.length);
    return {
      cost: (thing, offer) =>
        own[thing][offer] + AGAIN * uses[offer] + FAMILY_AGAIN * ofFamily[families[offer]],
      count: (_thing, offer, by) => {
        uses[offer] += by;
        ofFamily[families[offer]] += by;
      },
    };
  });
  return served.map(({ patch, circle, size }, i): PlacedOrnament => {
    const ornament = shelf[chosen[i]];
    const ground = {
      id: map.seams.length + patch.id,
      fabrics: [{ share: 1, left: patch.fabric, right: null }],
    };
    const [thread, ...more] = threadOrder(palette, -1, ground, seed);
    const others = Array.from(
      { length: ornament.threads.length - 1 },
      (_, k) => more[k % more.length] ?? thread,
    );
    return {
      ornament: ornament.name,
      patch: { at: [tenths(circle.x), tenths(circle.y)] },
      turn: isLong(ornament) ? 'fit' : 5 * Math.round((LEAN / 5) * noise(seed, 7012, patch.id)),
      parameters: { size: sizeFor(ornament, size) },
      thread,
      ...(others.length > 0 && { moreThreads: others }),
      passes: DEFAULT_PASSES,
    };
  });
}

interface Room {
  readonly patch: Patch;
  readonly circle: Circle;
  /** wanted size of what stands there, mm */
  readonly size: number;
}

/** The patches with the most clear cloth on which a thread shows, the roomiest first, none side by side. */
function roomyPatches({ map, widths, palette, kept, keepClear }: OrnamentQuestion): Room[] {
  const bands = map.seams.map((seam) =>
    clearOfLines([asLines(seam.points)], 0.75 * (widths.get(seam.id) ?? 0)),
  );
  const closed = keepClear.map(({ area }) => clearOfArea(area, 1));
  const borders = map.patches.map((): number[] => []);
  for (const { id, sides } of map.seams) {
    for (const { left, right } of sides) {
      for (const patch of [left, right]) if (patch !== null) borders[patch - 1].push(id);
    }
  }
  const rooms = map.patches
    .filter(({ boundary, holes }) => !kept.some((one) => stands(one, [boundary, ...holes])))
    .flatMap((patch): Room[] => {
      const near = [...new Set(borders[patch.id - 1])].map((seam) => bands[seam - 1]);
      const circle = largestClearCircle(patch, [...near, ...closed], { margin: 1, precision: ROUGHLY });
      const size = circle ? Math.min(LARGEST, SHARE_OF_ROOM * 2 * circle.radius) : 0;
      return circle && size >= SMALLEST ? [{ patch, circle, size }] : [];
    })
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

const sizeOf = ({ parameters }: Ornament) => parameters.find(({ name }) => name === 'size')!;

/** Whether it can stand in a room without being lost there or too large. */
const canBe = (ornament: Ornament, size: number): boolean =>
  ornament.smallest.size <= size && sizeOf(ornament).max >= 0.75 * size;

const sizeFor = (ornament: Ornament, size: number): number => {
  const { min, max } = sizeOf(ornament);
  return tenths(Math.min(max, Math.max(min, ornament.smallest.size, size)));
};

function isLong(ornament: Ornament): boolean {
  const { reach, overhang } = ornament.build({});
  const [across, along] = [reach.left + reach.right, overhang.start + overhang.end];
  return Math.max(across, along) > LONG * Math.min(across, along);
}

const tenths = (mm: number): number => Math.round(mm * 10) / 10;
