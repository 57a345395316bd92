import { withFabrics } from './asked/fabrics.js';
import { placedDressing } from './asked/placed-dressing.js';
import type { Block } from './block/block.js';
import { keptStops, placedBlock } from './block/placed-block.js';
import { placedSize, placementOf } from './block/placed-map.js';
import type { SeamMap } from './block/seam-map.js';
import type { Field } from './check/hoop.js';
import type { BlockSource, Dressing } from './formats/dressing.js';
import type { Placement } from './geometry/placement.js';
import { InputError } from './input-error.js';

/** A block as large as it is to be, turned as it is to be, in its fabrics, and its dressing with its places on it. */
export interface PlacedWork {
  readonly block: Block;
  readonly dressing: Dressing;
}

/** How a dressing places its block; where it is to fit the hoop, as large as the block alone would fit. */
export function placementAsked(map: SeamMap, dressing: Pick<Dressing, 'block' | 'hoop'>): Placement {
  const { scale = 1, turn = 0 } = dressing.block;
  return placementOf(map, scale === 'hoop' ? scaleToFit(map, turn, hoopOf(dressing)) : scale, turn);
}

/** @throws InputError for stops to leave out that there are not, and for fills that cannot be laid at another size */
export function placedWork(block: Block, dressing: Dressing): PlacedWork {
  const { leaveOut } = dressing.block;
  const placement = placementAsked(block.map, dressing);
  const placed = withStops(placedDressing(dressing, placement), block, leaveOut);
  return { block: withFabrics(placedBlock(block, placement, leaveOut), placed), dressing: placed };
}

/** Numbers of color stops as they are once some are left out. */
function withStops(dressing: Dressing, block: Block, leaveOut: BlockSource['leaveOut'] = []): Dressing {
  if (!block.existing || leaveOut.length === 0) return dressing;
  const kept = keptStops(block, leaveOut);
  const after = dressing.after ?? Math.max(...block.stops);
  const before = [...kept.keys()].filter((stop) => stop <= after).length;
  if (before === 0) {
    throw new InputError(
      'nothing-before',
      `--leave-out ${leaveOut.join(',')}`,
      `leaves nothing up to stop ${after}, behind which the new stops go in`,
      'keep one of these stops, or put the new ones in elsewhere with --after',
    );
  }
  return {
    ...dressing,
    after: dressing.after === null && !leaveOut.includes(after) ? null : before,
    ...(dressing.keepClear && {
      keepClear: dressing.keepClear.map((one) => {
        if (!one.stops) return one;
        const stops = one.stops.flatMap((stop) => kept.get(stop) ?? []);
        if (stops.length > 0) return { ...one, stops };
        throw new InputError(
          'nothing-kept-clear',
          `--leave-out ${leaveOut.join(',')}`,
          `leaves nothing of ${one.name}, which is to be kept clear`,
          'keep its stops, or do not keep them clear',
        );
      }),
    }),
  };
}

function hoopOf({ hoop }: Pick<Dressing, 'hoop'>): Field {
  if (hoop) return hoop;
  throw new InputError(
    'no-hoop',
    'block.scale',
    'is "hoop", and there is no hoop',
    'give one, such as "hoop": { "width": 130, "height": 180 }',
    ['block', 'scale'],
  );
}

/** The largest scale is told to this many parts of 1: a tenth of a millimeter on a block of 100 mm. */
const PARTS = 1000;
/** A stitch more on one side can change how far thread reaches past the block: after so many tries it is settled. */
const MOST_TRIES = 8;

/**
 * The largest scale, in thousandths, at which a turned block and so much more than it fits a hoop, this way or that.
 * @throws InputError when none does
 */
function scaleToFit(map: SeamMap, turn: number, hoop: Field, more: Field = { width: 0, height: 0 }): number {
  const { width, height } = placedSize(map, 1, turn);
  const into = (across: number, down: number) =>
    Math.min((across - more.width) / width, (down - more.height) / height);
  const scale = Math.floor(
    PARTS * Math.max(into(hoop.width, hoop.height), into(hoop.height, hoop.width)) + 1e-6,
  );
  if (scale > 0) return scale / PARTS;
  throw new InputError(
    'hoop-too-small',
    'hoop',
    `${hoop.width} x ${hoop.height} mm is too small for any of it`,
    'name a larger one',
  );
}

/**
 * Works a dressing as large as its hoop takes it, stitches that reach past the block and what came with it included.
 * They keep their size, so that the scale is found by trying: each time what reached past is left more room.
 */
export function workedToHoop<T>(
  map: SeamMap,
  dressing: Dressing,
  work: (scaled: Dressing) => { readonly worked: T; readonly field: Field },
): { readonly worked: T; readonly scale: number } {
  const hoop = hoopOf(dressing);
  const { turn = 0 } = dressing.block;
  let more: Field = { width: 0, height: 0 };
  for (let tries = 1; ; tries++) {
    const scale = scaleToFit(map, turn, hoop, more);
    const { worked, field } = work({ ...dressing, block: { ...dressing.block, scale } });
    if (tries === MOST_TRIES || fitsHoop(field, hoop)) return { worked, scale };
    const size = placedSize(map, scale, turn);
    more = {
      width: Math.max(more.width, field.width - size.width),
      height: Math.max(more.height, field.height - size.height),
    };
  }
}

const fitsHoop = (field: Field, { width, height }: Field): boolean =>
  [
    [width, height],
    [height, width],
  ].some(([across, down]) => field.width <= across + 1e-9 && field.height <= down + 1e-9);
