import { LONGEST_MOVE } from '../formats/dst-digits.js';
import { wholeMove } from '../formats/dst-records.js';
import type { StitchPen } from '../formats/stitch-pen.js';
import { toSteps } from '../geometry/units.js';
import { InputError } from '../input-error.js';
import type { Design, Stop } from './design.js';

/** Thread left lying over the work is trimmed when the needle travels further than this, mm (common practice). */
export const TRIM_OVER = 8;
/** A machine trims where it meets this many jumps in a row (common practice). */
export const TRIM_JUMPS = 3;

const TRIM_OVER_STEPS = toSteps(TRIM_OVER);
/** Five digits of steps: what the header of a stitch file can tell. */
const FURTHEST = 99_999;

/**
 * Sews a design to a pen, stop by stop: what came before it, the new stops, the way back to where the needle was left,
 * what came after, edges that go over it. The start is (0, 0) of the stitch file. Needle points are rounded to steps where they lie and then
 * differenced, so errors never add up. No stitch of zero length is sewn: a needle point that falls on the one before is
 * passed over. Of a stitch longer than a record holds, equal parts are sewn.
 *
 * Every new stop begins with the color change that sets it off from what lies before it; the change that follows the new
 * stops is the first record of `design.after`.
 * @throws InputError when a needle point is no number or lies too far away for a stitch file
 */
export function sew(design: Design, pen: StitchPen): void {
  const needle = new Needle(pen);
  if (design.reach) {
    const [left, below, right, above] = design.reach;
    needle.travel(left, below);
    needle.travel(right, above);
  }
  let prefixEnd: readonly [number, number] = [0, 0];
  if (design.before) {
    pen.keep(design.before.records);
    prefixEnd = wholeMove(design.before.records);
    needle.isAt(...prefixEnd);
  }
  const late = design.stops.length - (design.late ?? 0);
  design.stops.slice(0, late).forEach((stop, i) => {
    if (i > 0 || design.before) needle.change();
    sewStop(stop, design.origin, needle);
  });
  if (design.after) {
    needle.returnTo(...prefixEnd);
    pen.keep(design.after.records);
    const [dx, dy] = wholeMove(design.after.records);
    needle.isAt(prefixEnd[0] + dx, prefixEnd[1] + dy);
  }
  for (const stop of design.stops.slice(late)) {
    needle.change();
    sewStop(stop, design.origin, needle);
  }
}

function sewStop(stop: Stop, origin: readonly [number, number], needle: Needle): void {
  const { xy, start } = stop.runs;
  const [ox, oy] = origin;
  for (let run = 0; run + 1 < start.length; run++) {
    if (start[run + 1] - start[run] < 2) continue;
    for (let i = start[run]; i < start[run + 1]; i++) {
      const x = toSteps(xy[2 * i] + ox);
      const y = toSteps(-(xy[2 * i + 1] + oy));
      // written so that NaN fails it
      if (!(Math.abs(x) <= FURTHEST && Math.abs(y) <= FURTHEST))
        throw unreachable(stop, xy[2 * i], xy[2 * i + 1]);
      // whole numbers to the engine as well, which makes the rest of the way a third faster
      if (i === start[run]) needle.travel(x | 0, y | 0);
      else needle.stitch(x | 0, y | 0);
    }
  }
}

function unreachable(stop: Stop, x: number, y: number): InputError {
  return new InputError(
    'out-of-reach',
    `color stop "${stop.title}"`,
    `it has a needle point at ${Math.round(x)}, ${Math.round(y)} mm of the block`,
    'a stitch file reaches 9999.9 mm from its start; make the block or the offset of the row smaller',
  );
}

/** Where the needle is, in steps, y up, and how it gets elsewhere in records that a file can hold. */
class Needle {
  private x = 0;
  private y = 0;
  /** it has sewn since the last change, so that there is thread to trim */
  private threaded = false;

  constructor(private readonly pen: StitchPen) {}

  isAt(x: number, y: number): void {
    this.x = x;
    this.y = y;
  }

  change(): void {
    this.pen.change();
    this.threaded = false;
  }

  stitch(x: number, y: number): void {
    const dx = x - this.x;
    const dy = y - this.y;
    if (dx === 0 && dy === 0) return;
    if (fits(dx) && fits(dy)) this.pen.stitch(dx, dy);
    else this.inParts(dx, dy, partsOf(dx, dy), (px, py) => this.pen.stitch(px, py));
    this.x = x;
    this.y = y;
    this.threaded = true;
  }

  /** Jumps, as few as will do; at least as many as make the machine trim when thread would lie over the work. */
  travel(x: number, y: number): void {
    const dx = x - this.x;
    const dy = y - this.y;
    const trims = this.threaded && dx * dx + dy * dy > TRIM_OVER_STEPS * TRIM_OVER_STEPS;
    this.jumpTo(x, y, trims ? TRIM_JUMPS : 1);
  }

  /**
   * Jumps before a change: however short the way, thread is trimmed first, since what is drawn along would be cut far from
   * where it was tied off.
   */
  returnTo(x: number, y: number): void {
    const steps = Math.max(Math.abs(x - this.x), Math.abs(y - this.y));
    this.jumpTo(x, y, this.threaded ? Math.min(TRIM_JUMPS, steps) : 1);
  }

  private jumpTo(x: number, y: number, least: number): void {
    const dx = x - this.x;
    const dy = y - this.y;
    if (dx === 0 && dy === 0) return;
    const parts = Math.max(partsOf(dx, dy), least);
    this.inParts(dx, dy, parts, (px, py) => this.pen.jump(px, py));
    this.x = x;
    this.y = y;
  }

  /** Equal parts of a move, each rounded where it ends: none is longer than the whole length over `parts`, rounded up. */
  private inParts(dx: number, dy: number, parts: number, move: (dx: number, dy: number) => void): void {
    let doneX = 0;
    let doneY = 0;
    for (let i = 1; i <= parts; i++) {
      const toX = Math.round((dx * i) / parts);
      const toY = Math.round((dy * i) / parts);
      move(toX - doneX, toY - doneY);
      doneX = toX;
      doneY = toY;
    }
  }
}

const fits = (d: number): boolean => d <= LONGEST_MOVE && d >= -LONGEST_MOVE;
const partsOf = (dx: number, dy: number): number =>
  Math.max(1, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy)) / LONGEST_MOVE));
