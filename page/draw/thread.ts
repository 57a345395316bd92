import { traceLine } from '../../src/draw/pen.js';
import { castCoat, threadCoats } from '../../src/draw/strands.js';
import type { DrawnThread } from '../core/messages.js';
import { canvasPen, type Drawing } from './canvas-pen.js';

/** One stroke on the canvas. */
interface Stroke {
  readonly path: Path2D;
  readonly color: string;
  readonly width: number;
  readonly opacity: number;
}

/** Thread as strokes from below: the shadow of each run, then its pieces, each with edge, body and sheen. */
export function threadStrokes({ xy, cuts, hex, width }: DrawnThread): Stroke[] {
  const cast = castCoat(width);
  const coats = threadCoats(hex, width);
  const strokes: Stroke[] = [];
  for (let from = 0; from < cuts.length; ) {
    const end = cuts.indexOf(-1, from);
    const shadow = new Path2D();
    traceLine(canvasPen(shadow, cast.aside), xy, cuts[from], cuts[end - 1] + 1);
    strokes.push({ path: shadow, ...cast });
    for (let i = from; i + 1 < end; i++) {
      for (const { aside, ...look } of coats) {
        const path = new Path2D();
        traceLine(canvasPen(path, aside), xy, cuts[i], cuts[i + 1] + 1);
        strokes.push({ path, ...look });
      }
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

/** Draws thread on a canvas whose unit is the millimeter. */
export function drawThread(ctx: Drawing, thread: DrawnThread): void {
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  for (const { path, color, width, opacity } of strokesOf(thread)) {
    ctx.globalAlpha = opacity;
    ctx.strokeStyle = color;
    ctx.lineWidth = width;
    ctx.stroke(path);
  }
  ctx.globalAlpha = 1;
}
