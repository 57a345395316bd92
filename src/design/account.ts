import { replay } from '../formats/dst-records.js';
import type { StitchPen } from '../formats/stitch-pen.js';
import { ticketOf } from '../formats/thread-weight.js';
import { STEPS_PER_MM } from '../geometry/units.js';
import { type Design, stopsInOrder, type Thread } from './design.js';
import { COMMON_PACE, type Pace } from './pace.js';
import { sew, TRIM_JUMPS } from './sew.js';
import { changeTimes } from './thread-changes.js';

/** What one color stop costs. */
export interface StopAccount {
  /** from 1, in the order of the machine */
  readonly stop: number;
  readonly stitches: number;
  readonly jumps: number;
  /** three or more jumps in a row after something was sewn in the stop */
  readonly trims: number;
  /** needle thread, meters: stitches with their take-up, and what lies along jumps that are not trimmed */
  readonly threadM: number;
  /** bobbin thread, meters: stitches with their take-up */
  readonly bobbinM: number;
  /** sewing, trims, and the thread change that the stop begins with */
  readonly minutes: number;
}

export interface Account {
  /** one for each color stop of the file, those that came with the block included */
  readonly stops: readonly StopAccount[];
  readonly totals: {
    readonly stitches: number;
    readonly jumps: number;
    readonly trims: number;
    readonly stops: number;
    readonly threadM: number;
    readonly bobbinM: number;
    readonly minutes: number;
    /** size of what is sewn, hole to hole, mm */
    readonly widthMm: number;
    readonly heightMm: number;
  };
}

/** Counts what the stitch file of a design holds, on the same walk that writes it. */
export function account(design: Design, pace: Pace = COMMON_PACE): Account {
  const counter = new Counter();
  sew(design, counter);
  const stops = stopsInOrder(design);
  const threads = stops.map((stop) => stop?.thread ?? null);
  return counter.total(pace, threads, Boolean(design.before || design.after || design.stops.length));
}

/** Counts the records of a stitch file. */
export function accountOfRecords(records: Uint8Array, pace: Pace = COMMON_PACE): Account {
  const counter = new Counter();
  counter.keep(records);
  return counter.total(pace, [], true);
}

/** Heavy threads and metallic ones are sewn slowly. A weight that is no ticket number is taken as fine. */
function isSlow(thread: Thread | null | undefined): boolean {
  if (!thread) return false;
  const ticket = ticketOf(thread.weight);
  return (ticket !== null && ticket <= 12) || /metallic/i.test(thread.finish ?? '');
}

interface Tally {
  stitches: number;
  jumps: number;
  trims: number;
  /** steps */
  sewn: number;
  /** steps of thread that lie over the work between stitches */
  floated: number;
}

const blank = (): Tally => ({ stitches: 0, jumps: 0, trims: 0, sewn: 0, floated: 0 });

/** A pen that only counts. */
class Counter implements StitchPen {
  private readonly tallies: Tally[] = [blank()];
  private stop = this.tallies[0];
  private jumpsInRow = 0;
  private floating = 0;
  private x = 0;
  private y = 0;
  private left = Number.POSITIVE_INFINITY;
  private right = Number.NEGATIVE_INFINITY;
  private bottom = Number.POSITIVE_INFINITY;
  private top = Number.NEGATIVE_INFINITY;

  stitch(dx: number, dy: number): void {
    const length = Math.sqrt(dx * dx + dy * dy);
    if (this.jumpsInRow > 0) this.landed(true);
    this.stop.stitches++;
    this.stop.sewn += length;
    this.x += dx;
    this.y += dy;
    if (this.x < this.left) this.left = this.x;
    if (this.x > this.right) this.right = this.x;
    if (this.y < this.bottom) this.bottom = this.y;
    if (this.y > this.top) this.top = this.y;
  }

  jump(dx: number, dy: number): void {
    this.stop.jumps++;
    this.jumpsInRow++;
    this.floating += Math.sqrt(dx * dx + dy * dy);
    this.x += dx;
    this.y += dy;
  }

  change(): void {
    this.landed(false);
    this.stop = blank();
    this.tallies.push(this.stop);
  }

  keep(records: Uint8Array): void {
    replay(records, this);
  }

  /** Jumps are over. Without thread in the cloth there was nothing to trim and nothing to lie over the work. */
  private landed(sewsOn: boolean): void {
    if (this.stop.stitches > 0) {
      if (this.jumpsInRow >= TRIM_JUMPS) this.stop.trims++;
      else if (sewsOn) this.stop.floated += this.floating;
    }
    this.jumpsInRow = 0;
    this.floating = 0;
  }

  /** @param threads of the stops, as far as they are known */
  total(pace: Pace, threads: readonly (Thread | null)[], anything: boolean): Account {
    this.landed(false);
    const tallies = anything ? this.tallies : [];
    const names = tallies.map((_, i) => (threads[i] ? JSON.stringify(threads[i]) : null));
    const changes = changeTimes(names, pace);
    const stops = tallies.map((tally, i) => priced(tally, i + 1, changes[i], isSlow(threads[i]), pace));
    const sum = (what: (stop: StopAccount) => number) => stops.reduce((all, stop) => all + what(stop), 0);
    const sewn = this.right >= this.left;
    return {
      stops,
      totals: {
        stitches: sum((stop) => stop.stitches),
        jumps: sum((stop) => stop.jumps),
        trims: sum((stop) => stop.trims),
        stops: stops.length,
        threadM: sum((stop) => stop.threadM),
        bobbinM: sum((stop) => stop.bobbinM),
        minutes: sum((stop) => stop.minutes),
        widthMm: sewn ? (this.right - this.left) / STEPS_PER_MM : 0,
        heightMm: sewn ? (this.top - this.bottom) / STEPS_PER_MM : 0,
      },
    };
  }
}

function priced(tally: Tally, stop: number, change: number, heavy: boolean, pace: Pace): StopAccount {
  const { stitches, jumps, trims, sewn, floated } = tally;
  const rate = heavy ? pace.heavyStitchesPerMinute : pace.stitchesPerMinute;
  return {
    stop,
    stitches,
    jumps,
    trims,
    threadM: (sewn * pace.takeUp + floated) / STEPS_PER_MM / 1000,
    bobbinM: (sewn * pace.bobbinTakeUp) / STEPS_PER_MM / 1000,
    minutes: stitches / rate + (trims * pace.trimSeconds) / 60 + change,
  };
}
