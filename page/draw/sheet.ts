import type { Box } from '../../src/geometry/box.js';
import type { Drawing } from './canvas-pen.js';
import { allTiles, changedTiles, type Tile } from './changed-tiles.js';

/** Something that lies on the table; the key tells it from all that looks otherwise. */
export interface Lying {
  readonly key: string;
  /** all that it covers, mm */
  readonly boxes: () => readonly Box[];
  /** @param within what lies wholly outside of it, mm, may be left away */
  readonly draw: (ctx: Drawing, within?: Box) => void;
}

/** How large the canvas is, dots, and how the millimeters lie on it. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  /** dots to the millimeter, and the dot of the block's corner */
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/**
 * A canvas that is drawn square by square, all that lies in a square in its order, and anew only where something has changed.
 * A picture that was changed is thus the same dot for dot as one that is drawn from nothing.
 */
export class Sheet {
  readonly canvas: OffscreenCanvas;
  private readonly ctx: OffscreenCanvasRenderingContext2D;
  private frame = '';
  private was: readonly Lying[] = [];
  /** what lies lowest covers the whole block, costs most, and hardly ever changes */
  private ground: { readonly key: string; readonly canvas: OffscreenCanvas } | null = null;

  constructor() {
    this.canvas = new OffscreenCanvas(1, 1);
    this.ctx = this.canvas.getContext('2d')!;
  }

  /** Draws what lies there, from below. @returns whether anything had to be drawn */
  draw(frame: Frame, lying: readonly Lying[]): boolean {
    const key = JSON.stringify(frame);
    const changed = key === this.frame ? this.changed(frame, lying) : null;
    this.frame = key;
    this.was = lying;
    if (changed?.length === 0) return false;
    const { width, height } = frame;
    if (this.canvas.width !== width || this.canvas.height !== height) {
      Object.assign(this.canvas, { width, height });
    }
    for (const tile of changed ?? allTiles(width, height)) this.drawTile(frame, key, lying, tile);
    return true;
  }

  /** Where anything differs from what lay there before. */
  private changed(frame: Frame, lying: readonly Lying[]): Tile[] {
    const { was } = this;
    let from = 0;
    while (from < was.length && from < lying.length && was[from].key === lying[from].key) from++;
    let [to, wasTo] = [lying.length, was.length];
    while (to > from && wasTo > from && was[wasTo - 1].key === lying[to - 1].key) {
      to--;
      wasTo--;
    }
    const { width, height, scale, x, y } = frame;
    const boxes = [...was.slice(from, wasTo), ...lying.slice(from, to)].flatMap((one) => one.boxes());
    const dots = boxes.map(({ left, top, right, bottom }) => ({
      left: x + scale * left,
      top: y + scale * top,
      right: x + scale * right,
      bottom: y + scale * bottom,
    }));
    return changedTiles(dots, width, height);
  }

  private drawTile(frame: Frame, key: string, lying: readonly Lying[], tile: Tile): void {
    const { ctx } = this;
    const { scale, x, y } = frame;
    ctx.resetTransform();
    ctx.save();
    ctx.beginPath();
    ctx.rect(tile.x, tile.y, tile.width, tile.height);
    ctx.clip();
    ctx.clearRect(tile.x, tile.y, tile.width, tile.height);
    if (lying.length > 0) ctx.drawImage(this.groundOf(frame, key, lying[0]), 0, 0);
    ctx.setTransform(scale, 0, 0, scale, x, y);
    const within = {
      left: (tile.x - x) / scale,
      top: (tile.y - y) / scale,
      right: (tile.x + tile.width - x) / scale,
      bottom: (tile.y + tile.height - y) / scale,
    };
    for (const one of lying.slice(1)) {
      // what one sets is nothing to the next, in whichever square
      ctx.save();
      one.draw(ctx, within);
      ctx.restore();
    }
    ctx.restore();
  }

  private groundOf({ width, height, scale, x, y }: Frame, frame: string, lowest: Lying): OffscreenCanvas {
    const key = `${frame} ${lowest.key}`;
    if (this.ground?.key === key) return this.ground.canvas;
    const canvas = new OffscreenCanvas(width, height);
    const ctx = canvas.getContext('2d')!;
    ctx.setTransform(scale, 0, 0, scale, x, y);
    lowest.draw(ctx);
    this.ground = { key, canvas };
    return canvas;
  }
}
