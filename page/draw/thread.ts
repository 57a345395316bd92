import { traceLine } from '../../src/draw/pen.js';
import { castCoat, threadCoats } from '../../src/draw/strands.js';
import { type Box, boxesMeet, boxOf } from '../../src/geometry/box.js';
import type { DrawnThread } from '../core/messages.js';
import { canvasPen, type Drawing } from './canvas-pen.js';

/** One stroke on the canvas. */
interface Stroke {
  readonly path: Path2D;
  readonly color: string;
  readonly width: number;
  readonly opacity: number;
  /** all that it covers, mm */
  readonly box: Box;
}

/** Thread as strokes from below: the shadow of each run, then its pieces, each with edge, body and sheen. */
export function threadStrokes({ xy, cuts, hex, width }: DrawnThread): Stroke[] {
  const cast = castCoat(width);
  const coats = threadCoats(hex, width);
  const strokes: Stroke[] = [];
  const stroke = (from: number, to: number, { aside, ...look }: typeof cast) => {
    const path = new Path2D();
    traceLine(canvasPen(path, aside), xy, from, to);
    const { left, top, right, bottom } = boxOf([xy.subarray(2 * from, 2 * to)]);
    const half = look.width / 2;
    const box = {
      left: left + aside - half,
      right: right + aside + half,
      top: top - half,
      bottom: bottom + half,
    };
    strokes.push({ path, ...look, box });
  };
  for (let from = 0; from < cuts.length; ) {
    const end = cuts.indexOf(-1, from);
    stroke(cuts[from], cuts[end - 1] + 1, cast);
    for (let i = from; i + 1 < end; i++) {
      for (const coat of coats) stroke(cuts[i], cuts[i + 1] + 1, coat);
    }
    from = end + 1;
  }
  return strokes;
}

/** Strokes by the key of their thread, the latest used last. */
const known = new Map<string, Stroke[]>();
/** So many threads are remembered: several blocks' worth. */
const MOST = 600;

function strokesOf(thread: DrawnThread): Stroke[] {
  const strokes = known.get(thread.key) ?? threadStrokes(thread);
  known.delete(thread.key);
  known.set(thread.key, strokes);
  if (known.size > MOST) known.delete(known.keys().next().value!);
  return strokes;
}

/** What thread covers, stroke by stroke, mm. */
export const threadBoxes = (thread: DrawnThread): Box[] => strokesOf(thread).map(({ box }) => box);

/**
 * Draws thread on a canvas whose unit is the millimeter.
 * @param within what lies wholly outside of it may be left away
 */
export function drawThread(ctx: Drawing, thread: DrawnThread, within?: Box): void {
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  for (const { path, color, width, opacity, box } of strokesOf(thread)) {
    if (within && !boxesMeet(box, within)) continue;
    ctx.globalAlpha = opacity;
    ctx.strokeStyle = color;
    ctx.lineWidth = width;
    ctx.stroke(path);
  }
  ctx.globalAlpha = 1;
}
