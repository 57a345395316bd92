import { DstWriter } from '../formats/dst-write.js';
import type { Design } from './design.js';
import { sew } from './sew.js';

/**
 * The design as a DST stitch file.
 * @throws InputError when it has more stops or stitches, or a wider reach, than such a file can hold
 */
export function writeDesign(design: Design): Uint8Array {
  return sewn(design).file(design.name);
}

/** The design's stitch records alone, three bytes each, those that came with the block included. */
export function toRecords(design: Design): Uint8Array {
  return sewn(design).records();
}

function sewn(design: Design): DstWriter {
  const points = design.stops.reduce((sum, stop) => sum + (stop.runs.xy.length >> 1), 0);
  const kept = (design.before?.records.length ?? 0) + (design.after?.records.length ?? 0);
  const writer = new DstWriter(Math.ceil(points * 1.1 + kept / 3) + 64);
  sew(design, writer);
  return writer;
}
