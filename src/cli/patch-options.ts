import type { Block } from '../block/block.js';
import type { Dressing, PlacedOrnament } from '../formats/dressing.js';
import { InputError } from '../input-error.js';
import type { LoadedDictionary } from './dictionary.js';

/** What is to lie in patches, and what is there already. */
export interface PatchOptions {
  /** one after the other, each in the roomiest patch that is left */
  readonly ornament?: readonly string[];
  /** color stops of the stitch file, from 1, that nothing is sewn over */
  readonly keepClearStops?: readonly number[];
  readonly mix?: true;
}

/**
 * The dressing with ornaments in the roomiest patches and with what is sewn there kept clear.
 * @throws InputError for an ornament that there is not, more ornaments than patches, and stops of a drawing
 */
export async function withPatches(
  dressing: Dressing,
  block: Block,
  { ornament = [], keepClearStops, mix }: PatchOptions,
  dictionary: LoadedDictionary,
): Promise<Dressing> {
  if (keepClearStops && !block.existing) {
    throw new InputError(
      'keep-clear-stops-of-drawing',
      '--keep-clear-stops',
      `${block.name} is a drawing and has no color stops`,
      'mark what is to be kept clear in the drawing, with data-seamwright="keep-clear"',
    );
  }
  if (keepClearStops && block.existing) {
    const { length } = (await import('../formats/stops.js')).stopsOf(block.existing);
    const missing = keepClearStops.find((stop) => stop > length);
    if (missing !== undefined) {
      throw new InputError(
        'no-such-stop',
        `--keep-clear-stops ${missing}`,
        `${block.name} has no color stop ${missing}`,
        `it has color stops 1 to ${length}`,
      );
    }
  }
  const keepClear = keepClearStops && [
    {
      name: `stop${keepClearStops.length > 1 ? 's' : ''} ${keepClearStops.join(', ')}`,
      stops: keepClearStops,
    },
  ];
  const cleared: Dressing = keepClear ? { ...dressing, keepClear } : dressing;
  if (ornament.length === 0) return cleared;
  const [{ roomyPatches }, { askedOn }, { DEFAULT_PASSES }, { CLEAR, contrast }, { USUAL_THREADS }] =
    await Promise.all([
      import('../asked/roomy-patches.js'),
      import('./asked-for.js'),
      import('../harmony/passes.js'),
      import('../color/contrast.js'),
      import('../plan.js'),
    ]);
  const figures = await Promise.all(ornament.map((name) => askedOn(dictionary, 'ornaments', name)));
  const rooms = roomyPatches(block.map);
  if (figures.length > rooms.length) {
    throw new InputError(
      'more-ornaments-than-patches',
      '--ornament',
      `${figures.length} ornaments are named`,
      rooms.length ? `the block has ${rooms.length} patches, one for each` : 'the block has no patches',
    );
  }
  const threads = [...cleared.threads, ...USUAL_THREADS.slice(cleared.threads.length)];
  /** The first thread is one that is clearly seen on the fabric, further ones are those after it. */
  const threadsOn = (fabric: string | null, count: number) => {
    const seen = fabric === null ? 0 : threads.findIndex(({ hex }) => contrast(hex, fabric) >= CLEAR);
    const thread = Math.max(0, seen);
    const more = Array.from({ length: count - 1 }, (_, i) => (thread + 1 + i) % threads.length);
    return { thread, ...(more.length > 0 && { moreThreads: more }) };
  };
  const ornaments = figures.map((figure, k): PlacedOrnament => {
    const { x, y } = rooms[k].circle;
    return {
      ornament: figure.name,
      patch: { at: [Math.round(10 * x) / 10, Math.round(10 * y) / 10] },
      parameters: {},
      ...threadsOn(rooms[k].patch.fabric, figure.threads.length),
      passes: DEFAULT_PASSES,
      ...(mix && { pinned: true }),
    };
  });
  const named = Math.max(...ornaments.flatMap(({ thread, moreThreads = [] }) => [thread, ...moreThreads]));
  return { ...cleared, ornaments, threads: threads.slice(0, Math.max(cleared.threads.length, named + 1)) };
}
