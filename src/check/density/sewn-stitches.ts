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
  const { before, after, stops: own } = design;
  const points = own.reduce((sum, { runs }) => sum + runs.xy.length / 2, 0);
  const records = (before?.records.length ?? 0) + (after?.records.length ?? 0);
  const collector = new Collector(design.origin, points + records / 3);
  sew(design, collector);
  const stops = stopsInOrder(design);
  return collector.done((stop) => (stops[stop] ? threadWidth(stops[stop].thread.weight) : USUAL));
}

/** The stitches of a stitch file's records, three bytes each. */
export function stitchesOfRecords(records: Uint8Array): SewnStitches {
  const collector = new Collector([0, 0], records.length / 3);
  collector.keep(records);
  return collector.done(() => USUAL);
}

/** A pen that keeps where every stitch begins and ends. */
class Collector implements StitchPen {
  private ends: Float64Array;
  private count = 0;
  private readonly changes: number[] = [];
  /** where the needle is, in steps, y up, and in mm of the block's frame */
  private x = 0;
  private y = 0;
  private xMm = 0;
  private yMm = 0;

  /** @param expected so many stitches find room without moving the others */
  constructor(
    private readonly origin: readonly [number, number],
    expected: number,
  ) {
    this.ends = new Float64Array(4 * Math.ceil(Math.max(1, expected)));
    this.jump(0, 0);
  }

  stitch(dx: number, dy: number): void {
    const at = 4 * this.count++;
    if (at === this.ends.length) this.grow();
    const { ends } = this;
    ends[at] = this.xMm;
    ends[at + 1] = this.yMm;
    this.jump(dx, dy);
    ends[at + 2] = this.xMm;
    ends[at + 3] = this.yMm;
  }

  jump(dx: number, dy: number): void {
    this.x += dx;
    this.y += dy;
    this.xMm = fromSteps(this.x as Steps) - this.origin[0];
    this.yMm = -fromSteps(this.y as Steps) - this.origin[1];
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

  private grow(): void {
    const larger = new Float64Array(2 * this.ends.length);
    larger.set(this.ends);
    this.ends = larger;
  }
}
