import type { Box } from '../../src/geometry/box.js';
import type { Drawing } from './canvas-pen.js';

/** Something that lies on the board. */
export interface Lying {
  /** what it is; the same while it is changed */
  readonly name: string;
  /** how it looks: the same for what looks the same, and for nothing else */
  readonly key: string;
  /** all that it covers, in the canvas's own unit */
  readonly box: () => Box;
  readonly draw: (ctx: Drawing) => void;
}

/** A picture of it: where its corner lay on the canvas, in dots, and how the canvas's unit lay there. */
interface Pictured {
  readonly key: string;
  readonly on: DOMMatrix;
  readonly x: number;
  readonly y: number;
  readonly canvas: OffscreenCanvas | null;
}

/** Dots that a line may reach beyond its box by being made smooth. */
const SMOOTH = 2;

/**
 * What lies on each other, each kept as a picture of its own. To draw thread takes longer than a frame, and while a seam is
 * dragged some of it changes from picture to picture: each frame draws as much of it anew as there is time for, at least
 * one piece, and lays down the rest as it was.
 */
export class LyingPictures {
  private known = new Map<string, Pictured>();

  /**
   * @param hasTime asked before each piece but the first that is drawn anew
   * @returns whether all lies there as it is now; else it is to be called again
   */
  draw(ctx: CanvasRenderingContext2D, lying: readonly Lying[], hasTime: () => boolean): boolean {
    const on = ctx.getTransform();
    const kept = new Map<string, Pictured>();
    let isDone = true;
    let count = 0;
    for (const one of lying) {
      let is = this.known.get(one.name);
      if (is?.key !== one.key || !isAlike(is.on, on)) {
        if (count === 0 || hasTime()) {
          is = pictureOf(ctx, one, on);
          count++;
        } else isDone = false;
      }
      if (!is) continue;
      kept.set(one.name, is);
      layDown(ctx, is, on);
    }
    this.known = kept;
    return isDone;
  }
}

function pictureOf({ canvas }: CanvasRenderingContext2D, { key, box, draw }: Lying, on: DOMMatrix): Pictured {
  const { left, top, right, bottom } = box();
  const corners = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ].map(([x, y]) => on.transformPoint(new DOMPoint(x, y)));
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  // what lies beside the canvas is not seen
  const x = Math.max(0, Math.floor(Math.min(...xs)) - SMOOTH);
  const y = Math.max(0, Math.floor(Math.min(...ys)) - SMOOTH);
  const width = Math.min(canvas.width, Math.ceil(Math.max(...xs)) + SMOOTH) - x;
  const height = Math.min(canvas.height, Math.ceil(Math.max(...ys)) + SMOOTH) - y;
  if (!(width > 0 && height > 0)) return { key, on, x, y, canvas: null };
  const drawn = new OffscreenCanvas(width, height);
  const to = drawn.getContext('2d')!;
  to.setTransform(new DOMMatrix().translate(-x, -y).multiply(on));
  draw(to);
  return { key, on, x, y, canvas: drawn };
}

/** Where the view is another by now, a picture goes along with it until it is drawn anew. */
function layDown(ctx: CanvasRenderingContext2D, { canvas, on: was, x, y }: Pictured, on: DOMMatrix): void {
  if (!canvas) return;
  ctx.save();
  ctx.setTransform(isAlike(was, on) ? new DOMMatrix() : on.multiply(was.inverse()));
  ctx.drawImage(canvas, x, y);
  ctx.restore();
}

const isAlike = (p: DOMMatrix, q: DOMMatrix): boolean =>
  p.a === q.a && p.b === q.b && p.c === q.c && p.d === q.d && p.e === q.e && p.f === q.f;
