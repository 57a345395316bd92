import type { Box } from '../../geometry/box.js';
import { boxesInSquares } from '../../geometry/boxes-in-squares.js';
import type { Point } from '../../geometry/point.js';
import type { Points } from '../../geometry/polyline.js';
import { type Label, labelWidth } from './pattern.js';

/** Squares of the plane in which things are looked for, mm: about as large as a label. */
const SQUARE = 8;
/** Clear paper round a label, mm. */
const CLEAR = 0.5;

/** Where a label may stand: beside a point, on one side of it. */
export interface Anchor {
  readonly at: Point;
  /** unit vector away from what it names */
  readonly away: Point;
}

/** A place found for a label, and how much of the drawing lies beneath it. */
export interface Found {
  readonly at: Point;
  readonly covers: number;
}

/** The room that a drawing leaves for labels. */
export interface LabelRoom {
  /** What is drawn, so that labels keep off it; `weight` says how bad it is to write over a piece of it. */
  take(line: Points, weight: number): void;
  /** The first place that covers nothing, else the one that covers least: nearest distances first, then anchors in order. */
  find(label: Omit<Label, 'at'>, anchors: readonly Anchor[], distances: readonly number[]): Found;
  /** A label that is written takes its room. */
  write(label: Label): void;
}

/** Writing over another label is worse than over any number of lines. */
const LABEL = 1000;

export function labelRoom(): LabelRoom {
  const drawn = boxesInSquares<number>(SQUARE);
  const covered = (box: Box): number => {
    let sum = 0;
    drawn.each(box, (weight) => {
      sum += weight;
    });
    return sum;
  };
  return {
    take(line, weight) {
      for (let i = 0; i + 3 < line.length; i += 2) {
        const [x0, y0, x1, y1] = line.subarray(i, i + 4);
        // a long slanting piece fills little of its box
        const pieces = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / 2));
        for (let k = 0; k < pieces; k++) {
          const [s, t] = [k / pieces, (k + 1) / pieces];
          const [ax, bx] = [x0 + (x1 - x0) * s, x0 + (x1 - x0) * t];
          const [ay, by] = [y0 + (y1 - y0) * s, y0 + (y1 - y0) * t];
          drawn.put(
            {
              left: Math.min(ax, bx),
              right: Math.max(ax, bx),
              top: Math.min(ay, by),
              bottom: Math.max(ay, by),
            },
            weight,
          );
        }
      }
    },
    find(label, anchors, distances) {
      let best: Found = { at: anchors[0].at, covers: Number.POSITIVE_INFINITY };
      for (const distance of distances) {
        for (const { at, away } of anchors) {
          const reach =
            distance + (Math.abs(away[0]) * labelWidth(label) + Math.abs(away[1]) * label.size) / 2;
          const place: Point = [at[0] + away[0] * reach, at[1] + away[1] * reach];
          const covers = covered(labelBox({ ...label, at: place }, CLEAR));
          if (covers === 0) return { at: place, covers };
          if (covers < best.covers) best = { at: place, covers };
        }
      }
      return best;
    },
    write: (label) => drawn.put(labelBox(label, CLEAR), LABEL),
  };
}

/** The paper that a label takes, with so much round it. */
export function labelBox(label: Label, around = 0): Box {
  const [x, y] = label.at;
  const half = labelWidth(label) / 2 + around;
  const high = label.size / 2 + around;
  return { left: x - half, right: x + half, top: y - high, bottom: y + high };
}
