import { copied } from './flat.js';
import type { Corner, GuideLine } from './guide-line.js';
import { SAME_POINT } from './tolerances.js';

/** Arcs that ease a vertex are sampled at most this far apart in direction: sag stays under 0.0002 of their radius. */
const EASE_STEP = (2 * Math.PI) / 180;

/** Grows the samples of a guide line. */
export class GuideSamples {
  private readonly us: number[] = [];
  private readonly xs: number[] = [];
  private readonly ys: number[] = [];
  private readonly thetas: number[] = [];

  length(): number {
    return this.us[this.us.length - 1];
  }

  add(along: number, x: number, y: number, theta: number): void {
    this.us.push(this.us.length ? this.length() + along : 0);
    this.xs.push(x);
    this.ys.push(y);
    this.thetas.push(theta);
  }

  lineTo(x: number, y: number): void {
    const last = this.us.length - 1;
    const along = Math.hypot(x - this.xs[last], y - this.ys[last]);
    if (along > SAME_POINT) this.add(along, x, y, this.thetas[last]);
  }

  /** From the last sample, which is at (x, y) heading theta, along an arc of `turn` radians (y down: + is right). */
  arc(x: number, y: number, theta: number, turn: number, radius: number): void {
    const steps = Math.max(1, Math.ceil(Math.abs(turn) / EASE_STEP));
    const side = Math.sign(turn);
    const cx = x - side * radius * Math.sin(theta);
    const cy = y + side * radius * Math.cos(theta);
    for (let k = 1; k <= steps; k++) {
      const heading = theta + (turn * k) / steps;
      this.add(
        (radius * Math.abs(turn)) / steps,
        cx + side * radius * Math.sin(heading),
        cy - side * radius * Math.cos(heading),
        heading,
      );
    }
  }

  finish(closed: boolean, corners: readonly Corner[]): GuideLine {
    return {
      length: this.length(),
      closed,
      u: copied(this.us),
      x: copied(this.xs),
      y: copied(this.ys),
      theta: copied(this.thetas),
      corners,
    };
  }
}
