import { basename, dirname, resolve } from 'node:path';
import type { Block } from '../block/block.js';
import { blockChanged } from '../check/block-changed.js';
import type { BlockSource } from '../formats/dressing.js';
import { InputError } from '../input-error.js';
import type { DressOptions } from './dress-command.js';
import { type DressWork, heldText, inSaved, type SavedDressing } from './dress-work.js';
import { decodeText } from './input-file.js';
import { type BlockFile, readBlock, readBlockFile } from './read-block.js';

/** Options that a saved dressing carries itself. */
const carried = [
  'stops',
  'role',
  'after',
  'stitch',
  'treatment',
  'thread',
  'seam',
  'repeat',
  'width',
  'ends',
  'edge',
  'guide',
  'guideHeight',
  'guideLength',
  'outline',
  'through',
  'join',
  'split',
  'order',
  'byHand',
  'heavy',
  'snap',
  'gap',
  'ornament',
  'keepClearStops',
  'seed',
] as const;

/** Of these the ones that tell how it is to be mixed again. */
const ofMixing: ReadonlySet<string> = new Set(['seam', 'seed']);

export async function readSaved(path: string, bytes: Uint8Array): Promise<SavedDressing> {
  const { readDressing } = await import('../formats/dressing-file.js');
  const text = decodeText(bytes, path);
  return { path, text, dressing: await readDressing(text, path) };
}

/** @throws InputError when an option says what the dressing says itself, or its block cannot be used */
export async function workFromDressing(saved: SavedDressing, options: DressOptions): Promise<DressWork> {
  const work = await workAsSaved(saved, options);
  if (!options.fabric) return work;
  const { withFabricsAsked } = await import('./fabrics-asked.js');
  return { ...work, dressing: await withFabricsAsked(work.dressing, options.fabric, work.block.map) };
}

async function workAsSaved(saved: SavedDressing, options: DressOptions): Promise<DressWork> {
  const { path, dressing } = saved;
  const option = carried.find((name) => options[name] !== undefined && !(options.mix && ofMixing.has(name)));
  if (option !== undefined) {
    throw new InputError(
      'option-of-dressing',
      `--${option.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`,
      `${path} is a saved dressing and says this itself`,
      'change it there, or dress the block',
    );
  }
  const { svg, stops } = dressing.block;
  const blockPath = svg === undefined ? resolve(dirname(path), dressing.block.file) : null;
  const file = await inSaved(saved, () => blockFileOf(dressing.block, blockPath));
  if ((file.kind === 'stitch-file') !== (stops !== null)) {
    const isDrawing = stops !== null;
    await inSaved(saved, () => {
      throw new InputError(
        isDrawing ? 'stops-of-drawing' : 'stops-missing',
        'block.stops',
        `${dressing.block.file} is a ${isDrawing ? 'drawing and has no color stops' : 'stitch file, and which of its color stops are the seams is not said'}`,
        isDrawing
          ? 'null is right here'
          : `list them, such as [1, 2] (seamwright seams ${blockPath} shows them)`,
        ['block', 'stops'],
      );
    });
  }
  if (svg !== undefined) {
    const block = await inSaved(saved, () => heldBlock(file, dressing.block));
    return { block, dressing, file: null, saved };
  }
  const block = await readBlock(file, dressing.block);
  const isChanged = await hasChanged(dressing.block, file);
  return {
    block: isChanged ? withChange(block, dressing.block.file) : block,
    dressing: options.embed
      ? { ...dressing, block: { ...dressing.block, svg: heldText(file), digest: undefined } }
      : dressing,
    file,
    saved,
  };
}

/** The block's file, or the drawing that the dressing holds; what is wrong with it is a mistake of the dressing. */
async function blockFileOf({ file, svg }: BlockSource, path: string | null): Promise<BlockFile> {
  if (path === null) return { path: file, kind: 'drawing', bytes: new TextEncoder().encode(svg) };
  try {
    return await readBlockFile(path);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.code, `block ${error.where}`, error.wrong, error.right, ['block', 'file']);
  }
}

/** The block of a drawing that the dressing holds: what is wrong there is in no file of the drawing's name. */
async function heldBlock(file: BlockFile, source: BlockSource): Promise<Block> {
  try {
    return await readBlock(file, source);
  } catch (error) {
    const name = basename(file.path);
    if (!(error instanceof InputError) || !error.where.startsWith(name)) throw error;
    const where = `the drawing in it${error.where.slice(name.length)}`;
    throw new InputError(error.code, where, error.wrong, error.right, ['block', 'svg']);
  }
}

async function hasChanged({ digest }: BlockSource, { bytes }: BlockFile): Promise<boolean> {
  if (digest === undefined) return false;
  const { digestOf } = await import('./digest.js');
  return digest !== digestOf(bytes);
}

const withChange = (block: Block, file: string): Block => ({
  ...block,
  findings: [...block.findings, blockChanged(file)],
});
