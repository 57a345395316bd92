import { wholeMove } from '../formats/dst-records.js';
import type { StitchFile } from '../formats/stitch-file.js';
import { stopsOf } from '../formats/stops.js';
import { fromSteps, type Steps } from '../geometry/units.js';
import { InputError } from '../input-error.js';
import type { ExistingPart } from './design.js';

/** A stitch file cut in two between color stops, so that new ones can go in. */
export interface Opened {
  /** every record up to the end of the last stop that stays before; the change record behind it is not among them */
  readonly before: ExistingPart;
  /** from that change record to the end; null when the last stop stays before */
  readonly after: ExistingPart | null;
  /** where the needle is at the cut: mm from the start of the file, y down */
  readonly needle: readonly [number, number];
}

/**
 * Opens a stitch file after stop `afterStop`, counted from 1. `where` names the file or option in the message.
 * @throws InputError when the file has no such stop
 */
export function splitAfter(file: StitchFile, afterStop: number, where = 'stitch file'): Opened {
  const stops = stopsOf(file);
  const last = stops[afterStop - 1];
  if (!last) {
    const has = stops.length === 1 ? 'it has one color stop' : `it has color stops 1 to ${stops.length}`;
    throw new InputError('no-such-stop', where, `there is no color stop ${afterStop}`, has);
  }
  const cut = 3 * last.endRecord;
  const before = { records: file.records.slice(0, cut), stops: afterStop };
  const [dx, dy] = wholeMove(before.records);
  return {
    before,
    after:
      afterStop === stops.length
        ? null
        : { records: file.records.slice(cut), stops: stops.length - afterStop },
    needle: [fromSteps(dx as Steps), fromSteps((0 - dy) as Steps)],
  };
}
