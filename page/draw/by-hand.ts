import { traceLine } from '../../src/draw/pen.js';
import { body, mixed, shadowSide, sheen } from '../../src/draw/shade.js';
import { boxOf } from '../../src/geometry/box.js';
import type { DrawnRibbon } from '../core/messages.js';
import { canvasPen, type Drawing } from './canvas-pen.js';
import type { Lying } from './sheet.js';

/** What is put on by hand lies on the table as in the pictures that are taken away. */

/** Pale glass: what is put on by hand has no color in a dressing. */
const GLASS = '#e6ebee';
const DARK = '#120c08';
/** A bead's shadow reaches so far past it, as a share of its radius. */
export const BEAD_SHADOW = 0.25;

/** A bead, button or charm. */
export function drawBead(ctx: Drawing, [x, y]: readonly [number, number], radius: number): void {
  const disc = (dx: number, dy: number, share: number, color: string, opacity = 1) => {
    const path = new Path2D();
    path.arc(x + dx * radius, y + dy * radius, share * radius, 0, 2 * Math.PI);
    ctx.globalAlpha = opacity;
    ctx.fillStyle = color;
    ctx.fill(path);
  };
  disc(0.14, 0.18, 1, '#1b1410', 0.3);
  disc(0, 0, 1, shadowSide(GLASS));
  disc(-0.06, -0.06, 0.88, body(GLASS));
  disc(-0.3, -0.34, 0.3, '#ffffff', 0.85);
  disc(0, 0, Math.max(0.2 / radius, 0.2), mixed(GLASS, DARK, 0.7));
  ctx.globalAlpha = 1;
}

/** A ribbon's shadow reaches so far past it, mm. */
const SHADOW = 0.4;

/** Ribbon, braid or lace, with its shadow and two woven edges. */
export function lyingRibbon({ on, lines, width, hex }: DrawnRibbon): Lying {
  return {
    key: `ribbon ${on} ${width} ${hex}`,
    boxes: () =>
      lines.map((line) => {
        const by = width / 2 + SHADOW;
        const { left, right, top, bottom } = boxOf([line]);
        return { left: left - by, right: right + by, top: top - by, bottom: bottom + by };
      }),
    draw: (ctx) => {
      const path = new Path2D();
      for (const line of lines) traceLine(canvasPen(path), line);
      const stroke = (color: string, wide: number, opacity = 1) => {
        ctx.globalAlpha = opacity;
        ctx.strokeStyle = color;
        ctx.lineWidth = wide;
        ctx.stroke(path);
      };
      ctx.lineCap = 'butt';
      ctx.lineJoin = 'round';
      stroke('#1b1410', width + SHADOW, 0.25);
      stroke(shadowSide(hex), width);
      stroke(body(hex), width - 0.35);
      stroke(mixed(body(hex), DARK, 0.18), width * 0.72);
      stroke(body(hex), width * 0.62);
      stroke(sheen(hex), width * 0.2, 0.25);
      ctx.globalAlpha = 1;
    },
  };
}
