import { type Design, stopsInOrder } from '../../design/design.js';
import { sew } from '../../design/sew.js';
import { replay } from '../../formats/dst-records.js';
import type { StitchPen } from '../../formats/stitch-pen.js';
import { fromSteps, type Steps } from '../../geometry/units.js';
import { threadWidth } from '../../needle/craft.js';

/** All stitches of a piece of work as the machine sews them, in order, mm in the block's frame. */
export interface SewnStitches {
  /** stitch i goes from ends[4 i], ends[4 i + 1] to ends[4 i + 2], ends[4 i + 3], where it pierces */
  readonly ends: Float64Array;
  readonly stops: readonly SewnStop[];
}

/** The stitches of one color stop: `from` up to, not including, `to`. */
export interface SewnStop {
  readonly from: number;
  readonly to: number;
  /** of the thread laid down, mm */
  readonly width: number;
}

/** Thread of stops that came with a block, of which a stitch file tells nothing: No. 40. */
const USUAL = threadWidth('No. 40');

/** The stitches of a design, those that came with the block included. */
export function stitchesOf(design: Design): SewnStitches {
  const collector = new Collector(design.origin);
  sew(design, collector);
  const stops = stopsInOrder(design);
  return collector.done((stop) => (stops[stop] ? threadWidth(stops[stop].thread.weight) : USUAL));
}

/** The stitches of a stitch file's records, three bytes each. */
export function stitchesOfRecords(records: Uint8Array): SewnStitches {
  const collector = new Collector([0, 0]);
  collector.keep(records);
  return collector.done(() => USUAL);
}

/** A pen that keeps where every stitch begins and ends. */
class Collector implements StitchPen {
  private ends = new Float64Array(1 << 12);
  private count = 0;
  private readonly changes: number[] = [];
  private x = 0;
  private y = 0;

  constructor(private readonly origin: readonly [number, number]) {}

  stitch(dx: number, dy: number): void {
    const at = 4 * this.count++;
    if (at === this.ends.length) this.grow();
    this.put(at);
    this.jump(dx, dy);
    this.put(at + 2);
  }

  jump(dx: number, dy: number): void {
    this.x += dx;
    this.y += dy;
  }

  change(): void {
    this.changes.push(this.count);
  }

  keep(records: Uint8Array): void {
    replay(records, this);
  }

  done(width: (stop: number) => number): SewnStitches {
    const bounds = [0, ...this.changes, this.count];
    return {
      ends: this.ends.subarray(0, 4 * this.count),
      stops: bounds.slice(1).map((to, stop) => ({ from: bounds[stop], to, width: width(stop) })),
    };
  }

  private put(at: number): void {
    this.ends[at] = fromSteps(this.x as Steps) - this.origin[0];
    this.ends[at + 1] = -fromSteps(this.y as Steps) - this.origin[1];
  }

  private grow(): void {
    const larger = new Float64Array(2 * this.ends.length);
    larger.set(this.ends);
    this.ends = larger;
  }
}
