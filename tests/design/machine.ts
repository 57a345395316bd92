import { type LittleRecord, littleRecords } from '../formats/little-dst.js';

/**
 * An embroidery machine that holds thread, as simple as it can be: it knows nothing of how a file was made. It is told
 * which color stops to sew, and in what order; the frame goes to where a stop begins, whatever was sewn before. Thread is
 * cut only at the end of a stop and where three jumps or more come in a row (common practice).
 */
export interface Program {
  readonly stops: readonly Sewing[];
}

interface Sewing {
  /** where the frame is when the stop begins, steps */
  readonly x: number;
  readonly y: number;
  readonly records: readonly LittleRecord[];
}

/** What is wrong on the cloth. */
export interface Fault {
  readonly stop: number;
  readonly what: 'loose start' | 'loose end' | 'thread over the cloth' | 'dragged to the change';
  readonly at: readonly [number, number];
}

export interface Cloth {
  /** one 'x y' for each piercing */
  readonly holes: readonly string[];
  readonly faults: readonly Fault[];
}

const TRIM_JUMPS = 3;
/** A stitch of a tie is no longer than this, steps: 1.2 mm. */
const TIE_STITCH = 12;
/** Thread over the cloth between two stitches, steps: 8 mm, and what rounding adds. */
const FLOAT = 81.5;
/** Holes that lie on each other but for rounding, steps. */
const SAME = 1.5;

export function program(file: Uint8Array): Program {
  const stops: { x: number; y: number; records: LittleRecord[] }[] = [{ x: 0, y: 0, records: [] }];
  let x = 0;
  let y = 0;
  for (const record of littleRecords(file)) {
    x += record.dx;
    y += record.dy;
    if (record.kind === 'change') stops.push({ x, y, records: [] });
    else stops[stops.length - 1].records.push(record);
  }
  return { stops };
}

type Spot = readonly [number, number];
const apart = (a: Spot, b: Spot) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Three short stitches that lie on each other: forward, back, forward. */
function holds([a, b, c, d]: readonly Spot[]): boolean {
  if (!d) return false;
  const short = apart(a, b) <= TIE_STITCH && apart(b, c) <= TIE_STITCH && apart(c, d) <= TIE_STITCH;
  return short && apart(a, b) > 0 && apart(a, c) <= SAME && apart(b, d) <= SAME;
}

/** Sews stops of a program, counted from 0, one after another. */
export function sewOn({ stops }: Program, chosen: readonly number[]): Cloth {
  const holes: string[] = [];
  const faults: Fault[] = [];
  for (const stop of chosen) {
    const { records, ...frame } = stops[stop];
    let at: Spot = [frame.x, frame.y];
    // the needle's places from where thread first went in: null while no thread lies in the cloth
    let run: Spot[] | null = null;
    const jumps: Spot[] = [];
    const fault = (what: Fault['what']) => faults.push({ stop, what, at });
    const leave = () => {
      if (run && !holds(run.slice(0, 4))) fault('loose start');
      if (run && !holds(run.slice(-4).reverse())) fault('loose end');
      run = null;
    };
    const land = (sewsOn: boolean) => {
      if (jumps.length === 0 || !run) return;
      const last: Spot = run[run.length - 1];
      leave();
      if (jumps.length >= TRIM_JUMPS) return;
      if (!sewsOn && apart(last, at) > SAME) fault('dragged to the change');
      if (sewsOn && apart(last, at) > FLOAT) fault('thread over the cloth');
    };
    for (const { kind, dx, dy } of records) {
      if (kind === 'stitch') {
        land(true);
        jumps.length = 0;
        run ??= [at];
      }
      at = [at[0] + dx, at[1] + dy];
      if (kind === 'jump') jumps.push(at);
      else {
        run!.push(at);
        holes.push(at.join(' '));
      }
    }
    land(false);
    leave();
  }
  return { holes, faults };
}
