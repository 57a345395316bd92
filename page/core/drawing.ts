import { referenceToPatch, withFabrics } from '../../src/asked/fabrics.js';
import type { Block } from '../../src/block/block.js';
import { drawingOfMap } from '../../src/block/drawing-of-map.js';
import type { BlockSource, Dressing, KeepClear } from '../../src/formats/dressing.js';
import {
  OUTLINE,
  readSeamDrawing,
  type SeamDrawing,
  writeSeamDrawing,
} from '../../src/formats/seam-drawing.js';
import { SNAP } from '../../src/geometry/tolerances.js';
import { defaultDressing } from '../../src/plan.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { drawnBlock } from './drawn.js';
import { carriedPoint, linePoints } from './drawn-lines.js';
import { hasWishes, withoutWishes } from './meetings.js';
import type { Bare } from './messages.js';
import { missingIn } from './missing.js';
import { readBlock } from './read-block.js';
import { carrier, redrawn } from './redraw.js';
import { wishesCarried } from './wishes.js';

/** The block without thread, as it is drawn, and its lines; a drawing that was made elsewhere is given as seams. */
export async function bareBlock(block: Block, dressing: Dressing): Promise<Bare> {
  return {
    block: drawnBlock(withFabrics(block, dressing)),
    drawing: await drawingIn(block, dressing),
    insides: block.map.patches.flatMap((patch) => {
      const { id, at } = referenceToPatch(patch);
      return at ? [[id, at] as const] : [];
    }),
    missing: missingIn(block.map, dressing),
  };
}

async function drawingIn(block: Block, { block: { svg, traced, file } }: Dressing): Promise<SeamDrawing> {
  const drawn = traced ?? svg;
  return (drawn === undefined ? null : readSeamDrawing(drawn, file)) ?? drawingOfMap(block.map);
}

/**
 * The dressing of a block once its lines are drawn anew; the drawing is kept in it. Over a stitch file they are traced: its
 * own stops stay as they are.
 * @param blockOf reads a block
 */
export async function redraw(
  dressing: Dressing,
  drawing: SeamDrawing,
  blockOf: (source: BlockSource) => Promise<Block>,
): Promise<Dressing> {
  const block = await blockOf(dressing.block);
  const before = await drawingIn(block, dressing);
  const text = writeSeamDrawing(drawing);
  const after = readSeamDrawing(text, 'drawing')!;
  const drawn = sourceOf(block, dressing, text);
  const source = hasWishes(drawn)
    ? await wishesRedrawn(dressing.block, drawn, before, after, blockOf)
    : drawn;
  const next = { ...dressing, block: source, ...keptClear(block, dressing) };
  const to = { drawing: after, block: await blockOf(next.block) };
  return redrawn(next, { drawing: before, block: withFabrics(block, dressing) }, to);
}

/** What the maker said of junctions goes along with their lines, and counts the seams as they are then. */
async function wishesRedrawn(
  was: BlockSource,
  is: BlockSource,
  before: SeamDrawing,
  after: SeamDrawing,
  blockOf: (source: BlockSource) => Promise<Block>,
): Promise<BlockSource> {
  const [from, to] = [await blockOf(withoutWishes(was)), await blockOf(withoutWishes(is))];
  const [lines, now] = [linePoints(before), linePoints(after)];
  const place = (at: readonly [number, number]) => carriedPoint([at[0], at[1]], lines, now) ?? at;
  return { ...is, ...wishesCarried(is, from.map, to.map, { place, seam: carrier(before, after) }) };
}

function sourceOf({ existing }: Block, { block: source }: Dressing, text: string): BlockSource {
  if (existing) return { ...source, traced: text };
  // a drawing of another hand is one of ours from now on
  const { digest: _, ...rest } = source;
  return { ...rest, svg: text };
}

/** What the drawing itself kept clear is kept clear by the dressing from now on. */
function keptClear({ keepClear = [] }: Block, dressing: Dressing): { keepClear?: readonly KeepClear[] } {
  if (keepClear.length === 0) return {};
  const areas = keepClear.flatMap(({ name, area }) =>
    area.rings.map((ring): KeepClear => {
      const polygon = Array.from(
        { length: ring.length / 2 - 1 },
        (_, i) => [ring[2 * i], ring[2 * i + 1]] as const,
      );
      return { name, polygon };
    }),
  );
  return { keepClear: [...(dressing.keepClear ?? []), ...areas] };
}

/** An empty block of a size, mm, with nothing on it. */
export async function emptyBlock(width: number, height: number, library: Dictionary): Promise<Dressing> {
  const corners = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ] as const;
  const outline = {
    id: OUTLINE,
    closed: true,
    nodes: corners.map((at) => ({ at, before: null, after: null })),
  };
  const svg = writeSeamDrawing({ width, height, outline, lines: [] });
  const source = { file: 'my block.svg', svg, stops: null, snap: SNAP, through: [] };
  const { map } = await readBlock(source, null);
  return defaultDressing(map, { source, dictionary: library, seams: [] });
}
