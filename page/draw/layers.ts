import type { Drawing } from './canvas-pen.js';

/** Something that lies on the table; the key tells it from all that looks otherwise. */
export interface Lying {
  readonly key: string;
  readonly draw: (ctx: Drawing) => void;
}

interface Layer {
  readonly key: string;
  readonly canvas: OffscreenCanvas;
}

/**
 * What lies on each other, drawn in layers: while a seam is dragged little changes from picture to picture, so what lies
 * below and above that is drawn once and laid down as it is.
 */
export class Layers {
  private was: readonly string[] = [];
  private wasFrame = '';
  private below: Layer | null = null;
  private above: Layer | null = null;

  /** @param frame how the drawing lies on the canvas: where that changes all is drawn anew */
  draw(ctx: CanvasRenderingContext2D, frame: string, lying: readonly Lying[]): void {
    const keys = lying.map(({ key }) => key);
    const isMoved = frame !== this.wasFrame || this.was.length === 0;
    let from = 0;
    let to = lying.length;
    if (!isMoved) {
      while (from < to && keys[from] === this.was[from]) from++;
      const later = this.was.length - lying.length;
      while (to > from && keys[to - 1] === this.was[to - 1 + later]) to--;
      [from, to] = this.widened(frame, keys, from, to);
    }
    this.was = keys;
    this.wasFrame = frame;
    if (isMoved) {
      for (const { draw } of lying) draw(ctx);
      return;
    }
    this.below = layDown(ctx, frame, lying.slice(0, from), this.below);
    for (const { draw } of lying.slice(from, to)) draw(ctx);
    this.above = layDown(ctx, frame, lying.slice(to), this.above);
  }

  /** Layers that are there already serve as long as all that changed lies between them. */
  private widened(frame: string, keys: readonly string[], from: number, to: number): [number, number] {
    for (let less = from; less > 0; less--) {
      if (this.below?.key !== keyOf(frame, keys.slice(0, less))) continue;
      from = less;
      break;
    }
    for (let more = to; more < keys.length; more++) {
      if (this.above?.key !== keyOf(frame, keys.slice(more))) continue;
      to = more;
      break;
    }
    return [from, to];
  }
}

const keyOf = (frame: string, keys: readonly string[]): string => `${frame} ${keys.join('|')}`;

/** Lays down what never changes now, drawn before or drawn now. */
function layDown(
  ctx: CanvasRenderingContext2D,
  frame: string,
  lying: readonly Lying[],
  known: Layer | null,
): Layer | null {
  if (lying.length === 0) return known;
  const key = keyOf(
    frame,
    lying.map((one) => one.key),
  );
  const layer = known?.key === key ? known : { key, canvas: drawn(ctx, lying) };
  ctx.save();
  ctx.resetTransform();
  ctx.drawImage(layer.canvas, 0, 0);
  ctx.restore();
  return layer;
}

function drawn(ctx: CanvasRenderingContext2D, lying: readonly Lying[]): OffscreenCanvas {
  const canvas = new OffscreenCanvas(ctx.canvas.width, ctx.canvas.height);
  const to = canvas.getContext('2d')!;
  to.setTransform(ctx.getTransform());
  for (const { draw } of lying) draw(to);
  return canvas;
}
