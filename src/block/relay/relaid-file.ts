import { LONGEST_MOVE } from '../../formats/dst-digits.js';
import { decodeRecords } from '../../formats/dst-records.js';
import { DstWriter } from '../../formats/dst-write.js';
import { CHANGE, JUMP, type StitchFile } from '../../formats/stitch-file.js';
import { needleTrack } from '../../formats/stops.js';
import { turnedVector } from '../../geometry/placement.js';
import type { Point } from '../../geometry/point.js';
import { STEPS_PER_MM } from '../../geometry/units.js';

/** As many jumps in a row, and a machine trims (common practice). */
const TRIM_JUMPS = 3;

/** How the needle points of one run of stitches are laid anew; the first one is where the jumps ended. */
export type RelayRun = (run: readonly Point[], stop: number) => readonly Point[];

/**
 * A stitch file made larger about its start, turned counterclockwise as seen, and without some of its color stops. What
 * jumped jumps, what was trimmed is trimmed, and every color change that parts two stops is there.
 *
 * @param relay lays runs of stitches; null keeps every stitch, turned
 */
export function relaidFile(
  file: StitchFile,
  { scale, turn }: { readonly scale: number; readonly turn: number },
  leaveOut: ReadonlySet<number>,
  relay: RelayRun | null,
): StitchFile {
  const needle = new Needle(file.kinds.length);
  const place = ([x, y]: Point): Point => turnedVector([scale * x, scale * y], turn);
  const track = needleTrack(file.moves);
  const { kinds } = file;
  let stop = 1;
  for (let i = 0; i < kinds.length; ) {
    const kind = kinds[i];
    let end = i + 1;
    while (end < kinds.length && kinds[end] === kind && kind !== CHANGE) end++;
    if (kind === CHANGE) {
      stop++;
      if (!leaveOut.has(stop)) needle.change();
    } else if (!leaveOut.has(stop)) {
      const points = Array.from(
        { length: end - i + 1 },
        (_, k): Point => [track[2 * (i + k)], track[2 * (i + k) + 1]],
      );
      if (kind === JUMP) {
        if (relay) needle.jumpTo(place(points[points.length - 1]), end - i);
        else for (const p of points.slice(1)) needle.jumpTo(place(p), 1);
      } else {
        const [first, ...rest] = relay ? relay(points, stop) : points.map(place);
        needle.beAt(first);
        for (const p of rest) needle.stitchTo(p, relay === null);
      }
    }
    i = end;
  }
  const records = needle.records();
  return { label: file.label, ...decodeRecords(records), records };
}

/** Writes records to places, rounded to steps where they lie, so that errors never add up. */
class Needle {
  private readonly pen: DstWriter;
  private x = 0;
  private y = 0;
  private sewn = false;

  constructor(expected: number) {
    this.pen = new DstWriter(expected + 64);
  }

  /** The change before the first stop that is kept is none. */
  change(): void {
    if (this.sewn) this.pen.change();
  }

  jumpTo(p: Point, jumps: number): void {
    this.move(p, jumps >= TRIM_JUMPS ? TRIM_JUMPS : 1, (dx, dy) => this.pen.jump(dx, dy), jumps > 0);
    this.sewn = true;
  }

  /** Where a stop was left out, the needle has to get to the next one. */
  beAt(p: Point): void {
    this.move(p, TRIM_JUMPS, (dx, dy) => this.pen.jump(dx, dy), false);
  }

  stitchTo(p: Point, evenWithoutMove: boolean): void {
    this.move(p, 1, (dx, dy) => this.pen.stitch(dx, dy), evenWithoutMove);
    this.sewn = true;
  }

  records(): Uint8Array {
    return this.pen.records();
  }

  private move(
    [px, py]: Point,
    least: number,
    write: (dx: number, dy: number) => void,
    always: boolean,
  ): void {
    const [toX, toY] = [Math.round(px * STEPS_PER_MM), Math.round(-py * STEPS_PER_MM)];
    const [dx, dy] = [toX - this.x, toY - this.y];
    if (dx === 0 && dy === 0 && !always) return;
    const parts = Math.max(least, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy)) / LONGEST_MOVE));
    let [doneX, doneY] = [0, 0];
    for (let i = 1; i <= parts; i++) {
      const [nextX, nextY] = [Math.round((dx * i) / parts), Math.round((dy * i) / parts)];
      write(nextX - doneX, nextY - doneY);
      [doneX, doneY] = [nextX, nextY];
    }
    this.x = toX;
    this.y = toY;
  }
}
