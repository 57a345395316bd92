import type { Block } from '../../src/block/block.js';
import { aloneDesign } from '../../src/design/alone.js';
import { needlePoints } from '../../src/design/needle-points.js';
import { writeDesign } from '../../src/design/write-design.js';
import { drawDressed } from '../../src/draw/dressed-picture.js';
import { dress } from '../../src/dress.js';
import type { Dressing } from '../../src/formats/dressing.js';
import { writeDressing } from '../../src/formats/dressing-text.js';
import { dressReport } from '../../src/report/dress-report.js';
import { stopsCsv } from '../../src/report/stops-csv.js';
import { samplerOf } from '../../src/sampler.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import type { OutputKind } from './messages.js';

/** A file to take away, whole: the bytes that the command line writes for the same dressing. */
export function outputOf(
  block: Block,
  dressing: Dressing,
  kind: OutputKind,
  library: Dictionary,
): Uint8Array {
  switch (kind) {
    case 'dst':
      return writeDesign(dressed().design);
    case 'alone':
      return writeDesign(aloneDesign(dressed().design));
    case 'sampler':
      return writeDesign(samplerOf(dressing, library).dressed.design);
    case 'svg':
      return text(drawDressed(dressed()));
    case 'csv':
      return text(stopsCsv(dressReport(dressed(), [])));
    case 'points':
      return text(needlePoints(dressed().design));
    case 'dressing':
      return text(writeDressing(dressing));
  }

  function dressed() {
    return dress(block, dressing, library);
  }
}

const text = (content: string): Uint8Array => new TextEncoder().encode(content);
