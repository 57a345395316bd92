import { contrast, SEEN } from './contrast.js';

/** A fabric as the eye takes it in beside a thread: its colors, and how busy they are. */
export interface Fabric {
  /** at least one, the largest share first */
  readonly colors: readonly FabricColor[];
  /** from 0, plain, to 1: every spot of the size of a stitch differs plainly from the next */
  readonly busyness: number;
}

export interface FabricColor {
  /** '#rrggbb' */
  readonly hex: string;
  /** of the fabric that has this color; shares add up to 1 */
  readonly share: number;
}

/** A print as busy as this takes thread one weight heavier. Our own choice. */
export const BUSY = 0.5;

/** Of its way over a print a thread has to show along so much before it counts as showing. Our own choice. */
const MOST_OF_THE_WAY = 2 / 3;

export const plainFabric = (hex: string): Fabric => ({ colors: [{ hex, share: 1 }], busyness: 0 });

/**
 * A fabric with its shares adding up to 1, the largest first.
 * @param colors with shares in any measure, at least one of them above 0
 */
export function fabricOf(colors: readonly FabricColor[], busyness: number): Fabric {
  const whole = colors.reduce((sum, { share }) => sum + share, 0);
  const shared = colors.map(({ hex, share }) => ({ hex: hex.toLowerCase(), share: share / whole }));
  return { colors: shared.sort((a, b) => b.share - a.share), busyness };
}

/** How a thread stands out on a fabric. */
export interface Showing {
  /** contrast ratio, 1 to 21, that it has along two thirds of its way at least: on a plain fabric the contrast of the two colors */
  readonly contrast: number;
  /** along which share of its way it is visible at all */
  readonly seen: number;
}

/**
 * How a thread shows on a fabric. Each of its colors lies on each color of the fabric by their shares.
 * @param thread its colors, '#rrggbb', one or, of a variegated thread, several that come by equal shares
 */
export function showing(thread: readonly string[], { colors }: Fabric): Showing {
  const parts = thread
    .flatMap((hex) =>
      colors.map((color) => ({ ratio: contrast(hex, color.hex), share: color.share / thread.length })),
    )
    .sort((a, b) => b.ratio - a.ratio);
  const seen = parts.reduce((sum, { ratio, share }) => sum + (ratio >= SEEN ? share : 0), 0);
  let way = 0;
  for (const { ratio, share } of parts) {
    way += share;
    if (way >= MOST_OF_THE_WAY - 1e-9) return { contrast: ratio, seen };
  }
  return { contrast: 1, seen };
}
