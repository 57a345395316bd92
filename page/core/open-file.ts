import { recognizeStops } from '../../src/block/roles/recognize.js';
import type { Recognized, Role } from '../../src/block/roles/role.js';
import type { BlockSource, Dressing } from '../../src/formats/dressing.js';
import { readDressing } from '../../src/formats/dressing-file.js';
import { readDst } from '../../src/formats/dst-read.js';
import { decodeText, fileKind } from '../../src/formats/file-kind.js';
import { SNAP } from '../../src/geometry/tolerances.js';
import { InputError } from '../../src/input-error.js';
import { hasChanged } from './file-digest.js';
import type { GivenFile } from './messages.js';

/** A file understood so far that its block can be read. */
export interface OpenedFile {
  /** what the block is read from, where a dressing does not hold it itself */
  readonly file: GivenFile | null;
  readonly source: BlockSource;
  readonly dressing: Dressing | null;
  readonly recognized: Recognized | null;
  /** the block's file is another than when the dressing was saved */
  readonly isChanged: boolean;
}

/**
 * @param beside a second file, dropped with it: of a dressing and a block, which is which is told by what they hold
 * @param roles what stops of a stitch file are, where the maker says so
 * @throws InputError when the file is none of those read here, or no seams are found in it
 */
export async function openFile(
  file: GivenFile,
  beside: GivenFile | undefined,
  roles: ReadonlyMap<number, Role>,
): Promise<OpenedFile> {
  const kind = fileKind(file.name, file.bytes);
  if (kind === 'record') {
    const read = await readDressing(decodeText(file.bytes, file.name), file.name);
    const dressing = { ...read, block: withDrawing(read.block, beside) };
    const isChanged = await hasChanged(read.block, beside);
    return { file: beside ?? null, source: dressing.block, dressing, recognized: null, isChanged };
  }
  if (beside && fileKind(beside.name, beside.bytes) === 'record') return openFile(beside, file, roles);
  if (kind === 'drawing') {
    const svg = decodeText(file.bytes, file.name);
    const source = { file: file.name, svg, stops: null, snap: SNAP, through: [] };
    return { file: null, source, dressing: null, recognized: null, isChanged: false };
  }
  const recognized = recognizeStops(readDst(file.bytes, file.name), roles);
  if (recognized.seams.length === 0) throw noSeams(file.name);
  const source = { file: file.name, stops: recognized.seams, snap: SNAP, through: [] };
  return { file, source, dressing: null, recognized, isChanged: false };
}

/** A drawing is kept in its dressing, so that there is one file to keep. */
function withDrawing(source: BlockSource, beside: GivenFile | undefined): BlockSource {
  if (!beside || fileKind(beside.name, beside.bytes) !== 'drawing') return source;
  const { digest: _, ...rest } = source;
  return { ...rest, file: beside.name, svg: decodeText(beside.bytes, beside.name) };
}

const noSeams = (name: string): InputError =>
  new InputError(
    'stops-missing',
    name,
    'none of its color stops looks like the seams of a block',
    'open the stitch file that pieces the block',
  );
