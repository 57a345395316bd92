import type { Block } from '../../src/block/block.js';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { stitchFaults } from '../../src/check/figure-sanity.js';
import { dress } from '../../src/dress.js';
import { SNAP } from '../../src/geometry/tolerances.js';
import { defaultDressing } from '../../src/plan.js';
import { checkStitchFile } from '../../src/stitches/check.js';
import { parametersOf } from '../../src/stitches/compile.js';
import { Copies, countsOf } from '../../src/stitches/copies.js';
import type { Dictionary } from '../../src/stitches/dictionary.js';
import { parseStitch } from '../../src/stitches/parse.js';
import type { StitchRecord } from '../../src/stitches/stitch-record.js';
import type { Benched, BenchFinding, BenchUnit } from './bench-messages.js';
import { benchThread } from './bench-threads.js';
import { complaintOf } from './complaint.js';
import { drawnBlock, drawnThread } from './drawn.js';
import { withStitches } from './own-stitches.js';

/** Sample seams as a swatch has them, a straight one, a gentle curve and a right-angle corner, and a ring. */
const SAMPLES = `<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="70mm" viewBox="0 0 210 70">
  <path fill="none" stroke="#000" d="M6 18H96"/>
  <path fill="none" stroke="#000" d="M6 56Q51 36 96 56"/>
  <path fill="none" stroke="#000" d="M108 18H146V64"/>
  <circle fill="none" stroke="#000" cx="181" cy="36" r="18"/>
</svg>`;
const source = { file: 'bench.svg', stops: null, snap: SNAP, through: [] };

export const benchSamples = (): Promise<Block> => readSvgBlock(SAMPLES, source.file, source);

/** A stitch as it is being made: its unit, and how it lies on sample seams; or what is wrong with it. */
export async function benched(
  name: string,
  record: StitchRecord,
  samples: Block,
  library: Dictionary,
): Promise<Benched> {
  try {
    const stitch = parseStitch(record, name);
    const unit = unitOf(record, name);
    const dictionary = withStitches(library, new Map([[name, stitch]]));
    const dressing = defaultDressing(samples.map, { source, dictionary, stitch: name });
    const threads = dressing.threads.map((thread, k) => ({ ...thread, hex: benchThread(k) }));
    const dressed = dress(samples, { ...dressing, threads }, dictionary);
    return {
      unit,
      samples: {
        block: drawnBlock(samples),
        threads: dressed.design.stops.map(({ runs, thread }) => drawnThread(runs, thread)),
      },
      wrong: [],
    };
  } catch (error) {
    const mistakes = await checkStitchFile(record, WHERE);
    return { unit: null, samples: null, wrong: (mistakes.length ? mistakes : [error]).map(complaintOf) };
  }
}

/** What a stitch that has no file yet is called in messages. */
const WHERE = 'This stitch';

/** One unit at the usual sizes. Every point is asked for as a seat, so that none is worked out in another way. */
function unitOf(record: StitchRecord, name: string): BenchUnit {
  const { points } = new Copies(record, countsOf(parametersOf(record), {}), []);
  const seats = Object.fromEntries(points.map((point) => [point.name, point.name]));
  const unit = parseStitch({ ...record, seats }, name).build({});
  const own = parseStitch(record, name).build({});
  return {
    length: unit.length,
    spots: unit.seats,
    seats: own.seats,
    legs: [...unit.legs, ...unit.ending].map(({ name: called, kind, path, size, thread }, k) => ({
      name: called,
      kind,
      path,
      size,
      thread,
      isEnding: k >= unit.legs.length,
    })),
    left: unit.reach.left,
    right: unit.reach.right,
  };
}

/** All that is wrong with a stitch, or worth a look: its file first; how it sews over all its sizes where that is sound. */
export async function benchFindings(name: string, record: StitchRecord): Promise<BenchFinding[]> {
  const mistakes = await checkStitchFile(record, WHERE);
  if (mistakes.length) {
    return mistakes.map((mistake) => ({ level: 'wrong', ...complaintOf(mistake), at: null }));
  }
  return stitchFaults(parseStitch(record, name)).map(({ level, what, right, at }) => ({
    level,
    where: '',
    wrong: what,
    right,
    at: at === '{}' ? null : at.replace(/[{}"]/g, '').replaceAll(':', ' ').replaceAll(',', ', '),
  }));
}
