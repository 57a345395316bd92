import type { Block } from '../../src/block/block.js';
import { recognizeStops } from '../../src/block/roles/recognize.js';
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
import { PAPERS } from '../../src/sheet/page-sizes.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { withFileDigest } from './file-digest.js';
import type { GivenFile, OutputKind } from './messages.js';

/**
 * A file to take away, whole: the bytes that the command line writes for the same dressing.
 * @param held the block's file, where the dressing does not hold it
 */
export async function outputOf(
  block: Block,
  dressing: Dressing,
  kind: OutputKind,
  library: Dictionary,
  held: GivenFile | null = null,
): Promise<Uint8Array> {
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
    case 'sheet': {
      const { sewSheet } = await import('../../src/sheet/sew-sheet.js');
      const done = dressed();
      const roles = block.existing ? recognizeStops(done.block.existing!).roles : [];
      return (await sewSheet(done, dressReport(done, []), roles, { paper: 'a4' })).bytes;
    }
    case 'pattern': {
      const { patternOf } = await import('../../src/sheet/pattern/pattern-of.js');
      const { patternPdf } = await import('../../src/sheet/pattern/pattern-pdf.js');
      return (await patternPdf(patternOf(dressed(), library), PAPERS.a4)).bytes;
    }
    case 'dressing':
      return text(writeDressing(await withFileDigest(dressing, held)));
  }

  function dressed() {
    return dress(block, dressing, library);
  }
}

const text = (content: string): Uint8Array => new TextEncoder().encode(content);
