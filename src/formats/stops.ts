import type { Points } from '../geometry/polyline.js';
import { STEPS_PER_MM } from '../geometry/units.js';
import { CHANGE, JUMP, STITCH, type StitchFile } from './stitch-file.js';

/** One color stop of a stitch file. The change records between stops belong to neither. */
export interface FileStop {
  /** from 1 */
  readonly stop: number;
  /** its records are firstRecord to endRecord - 1; an empty stop has none */
  readonly firstRecord: number;
  readonly endRecord: number;
  readonly stitches: number;
  readonly jumps: number;
  /**
   * Run segments: the place where the jumps (or the stop before) left the needle, then every hole. Millimeters from
   * the start of the file, y down.
   */
  readonly runs: readonly Points[];
}

/** The color stops of a stitch file: always one more than it has color changes, empty ones included. */
export function stopsOf(file: Pick<StitchFile, 'kinds' | 'moves'>): FileStop[] {
  const { kinds } = file;
  const needle = needleTrack(file.moves);
  const stops: FileStop[] = [];
  let first = 0;
  for (let i = 0; i <= kinds.length; i++) {
    if (i < kinds.length && kinds[i] !== CHANGE) continue;
    stops.push(stopFrom(stops.length + 1, first, i, kinds, needle));
    first = i + 1;
  }
  return stops;
}

/** Where the needle is before record 0, after record 0, after record 1, ...: x0 y0 x1 y1 ... in mm, y down. */
export function needleTrack(moves: Int16Array): Float64Array {
  const track = new Float64Array(moves.length + 2);
  let x = 0;
  let y = 0;
  for (let i = 0; i < moves.length; i += 2) {
    x += moves[i];
    y -= moves[i + 1];
    track[i + 2] = x / STEPS_PER_MM;
    track[i + 3] = y / STEPS_PER_MM;
  }
  return track;
}

function stopFrom(
  stop: number,
  first: number,
  end: number,
  kinds: Uint8Array,
  track: Float64Array,
): FileStop {
  const runs: Points[] = [];
  let stitches = 0;
  let jumps = 0;
  for (let i = first; i < end; ) {
    if (kinds[i] === JUMP) {
      jumps++;
      i++;
      continue;
    }
    const start = i;
    while (i < end && kinds[i] === STITCH) i++;
    stitches += i - start;
    runs.push(track.slice(2 * start, 2 * (i + 1)));
  }
  return { stop, firstRecord: first, endRecord: end, stitches, jumps, runs };
}
