import { patchNamed } from '../asked/free-place.js';
import type { Patch, SeamMap } from '../block/seam-map.js';
import type { PlacedOrnament, ThreadChoice } from '../formats/dressing.js';
import { noise } from '../geometry/noise.js';
import type { Dictionary } from '../stitches/dictionary.js';
import type { Ornament } from '../stitches/stitch.js';
import { choose } from './choose.js';
import { ornamentRooms, type RoomQuestion } from './ornament-rooms.js';
import { DEFAULT_PASSES } from './passes.js';
import { puzzleOf } from './puzzle.js';
import { keyOf, numbered } from './taste.js';
import { threadOrder } from './thread-choice.js';

/** What an ornament far from its usual size costs for each factor e, squared; a second use of it, and of its family; and chance. */
const UNUSUAL_SIZE = 1.5;
const AGAIN = 1.2;
const FAMILY_AGAIN = 0.8;
const CHANCE = 0.8;
/** A figure of fewer legs, such as a single petal, is lost in a patch by itself: it is for the tips of a stitch. */
const LEAST_LEGS = 4;
const TOO_SLIGHT = 3;
/** A flower leans up to so far, degrees: all upright look stamped. */
const LEAN = 25;
/** Figures longer than broad by this lie along their patch. */
const LONG = 1.4;

export interface OrnamentQuestion extends RoomQuestion {
  readonly dictionary: Dictionary;
  readonly seed: number;
}

/** Ornaments for the roomiest patches, seldom two alike, none in patches side by side. */
export function chosenOrnaments(question: OrnamentQuestion): PlacedOrnament[] {
  const { map, dictionary, palette, kept, seed } = question;
  const rooms = ornamentRooms(question);
  const shelf = [...dictionary.ornaments.values()];
  const offers = rooms.map(({ size }) => shelf.flatMap((one, k) => (canBe(one, size) ? [k] : [])));
  const served = rooms.filter((_, i) => offers[i].length > 0);
  if (served.length === 0) return [];
  const slight = shelf.map((one) => (isSlight(one) ? TOO_SLIGHT : 0));
  const own = served.map(({ patch, size }) =>
    shelf.map(
      (one, k) =>
        slight[k] +
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
    for (const { ornament } of kept) {
      const known = shelf.findIndex(({ name }) => name === ornament);
      if (known < 0) continue;
      uses[known]++;
      ofFamily[families[known]]++;
    }
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
    return {
      ornament: ornament.name,
      patch: { at: [tenths(circle.x), tenths(circle.y)] },
      turn: isLong(ornament) ? 'fit' : 5 * Math.round((LEAN / 5) * noise(seed, 7012, patch.id)),
      parameters: { size: sizeFor(ornament, size) },
      ...ornamentThreads(ornament, patch, map, palette, seed),
      passes: DEFAULT_PASSES,
    };
  });
}

const sizeOf = ({ parameters }: Ornament) => parameters.find(({ name }) => name === 'size')!;

/** The threads of an ornament on a patch: the one that shows best first, then others that differ from it and show. */
export function ornamentThreads(
  { threads }: Ornament,
  { id, fabric }: Pick<Patch, 'id' | 'fabric'>,
  { seams }: Pick<SeamMap, 'seams'>,
  palette: readonly ThreadChoice[],
  seed: number,
): { readonly thread: number; readonly moreThreads?: readonly number[] } {
  const ground = { id: seams.length + id, fabrics: [{ share: 1, left: fabric, right: null }] };
  const [thread, ...more] = threadOrder(palette, -1, ground, seed);
  const others = Array.from({ length: threads.length - 1 }, (_, k) => more[k % more.length] ?? thread);
  return { thread, ...(others.length > 0 && { moreThreads: others }) };
}

/** An ornament that stands already, in threads of a palette. */
export function inPalette(
  placed: PlacedOrnament,
  map: SeamMap,
  { ornaments }: Dictionary,
  palette: readonly ThreadChoice[],
  seed: number,
): PlacedOrnament {
  const ornament = ornaments.get(placed.ornament);
  const place = placed.at ? { at: placed.at } : placed.patch;
  const patch = place === undefined ? null : patchNamed(map, place);
  const { moreThreads: _, ...rest } = placed;
  const ground = patch ?? { id: 0, fabric: null };
  return { ...rest, ...(ornament ? ornamentThreads(ornament, ground, map, palette, seed) : { thread: 0 }) };
}

/** Whether it can stand in a room without being lost there or too large. */
const canBe = (ornament: Ornament, size: number): boolean =>
  ornament.smallest.size <= size && sizeOf(ornament).max >= 0.75 * size;

const sizeFor = (ornament: Ornament, size: number): number => {
  const { min, max } = sizeOf(ornament);
  return tenths(Math.min(max, Math.max(min, ornament.smallest.size, size)));
};

const isSlight = (ornament: Ornament): boolean =>
  ornament.build({}).legs.filter(({ kind }) => kind !== 'under').length < LEAST_LEGS;

function isLong(ornament: Ornament): boolean {
  const { reach, overhang } = ornament.build({});
  const [across, along] = [reach.left + reach.right, overhang.start + overhang.end];
  return Math.max(across, along) > LONG * Math.min(across, along);
}

const tenths = (mm: number): number => Math.round(mm * 10) / 10;
