import type { Block } from '../block/block.js';
import type { WishesByNumber } from '../block/wishes-by-number.js';
import type { BlockSource } from '../formats/dressing.js';
import { SNAP } from '../geometry/tolerances.js';
import { InputError } from '../input-error.js';
import { rolesFinding } from '../report/roles-text.js';
import type { LoadedDictionary } from './dictionary.js';
import type { DressOptions } from './dress-command.js';
import { type DressWork, heldText } from './dress-work.js';
import { guideAsked } from './guide-options.js';
import { type BlockFile, readBlock } from './read-block.js';
import { seamsRecognizedIn } from './recognized.js';
import { threadColor } from './thread-color.js';

/** A dressing made from options: where none says otherwise, stitches are chosen seam by seam. */
export async function workFromOptions(
  file: BlockFile,
  options: DressOptions,
  dictionary: LoadedDictionary,
): Promise<DressWork> {
  const found = await seamsRecognizedIn(file, options);
  const source: BlockSource = {
    file: file.path,
    ...(options.embed && { svg: heldText(file) }),
    stops: options.stops ?? found?.seams ?? null,
    ...(options.role && { roles: [...options.role].map(([stop, role]) => ({ stop, role })) }),
    snap: options.snap ?? SNAP,
    through: [],
  };
  const { block: read, wished } = await blockAsWished(file, source, options);
  const block = found ? { ...read, findings: [...read.findings, rolesFinding(found)] } : read;
  if (options.after !== undefined) refuseForDrawing(block, file, '--after');
  const [{ defaultDressing }, { placementAsked }] = await Promise.all([
    import('../plan.js'),
    import('../placed.js'),
  ]);
  const { placedByOptions } = await import('./place-options.js');
  const bySize = placedByOptions({ block: wished, hoop: null }, options);
  const { scale } = placementAsked(block.map, bySize);
  const dressing = defaultDressing(block.map, {
    source: wished,
    dictionary,
    stitch: options.stitch,
    treatment: options.treatment === undefined ? undefined : dictionary.treatments.get(options.treatment),
    // what mixing dresses it chooses itself
    seams: options.mix ? [] : options.seam,
    scale,
    repeat: options.repeat,
    width: options.width,
    ends: options.ends,
    edge: options.edge,
    guide: guideAsked(options),
    outline: options.outline,
    gap: options.gap,
    after: options.after ?? found?.after,
    thread: options.thread === undefined ? undefined : await threadColor(options.thread),
    seed: options.seed,
  });
  const [{ withPatches }, { withFabrics }, { withFabricsAsked }] = await Promise.all([
    import('./patch-options.js'),
    import('../asked/fabrics.js'),
    import('./fabrics-asked.js'),
  ]);
  const clothed = await withFabricsAsked(dressing, options.fabric, block.map);
  const { byHand, order, library } = options;
  return {
    block,
    dressing: {
      ...(await withPatches(clothed, withFabrics(block, clothed), options, dictionary)),
      ...(byHand !== undefined && { byHand }),
      ...(order && { order }),
      ...(library !== undefined && { library }),
    },
    file,
    saved: null,
  };
}

/** The block with its junctions as the maker wishes, told by the seams that the block has by itself. */
export async function blockAsWished(
  file: BlockFile,
  source: BlockSource,
  { through, join, split }: WishesByNumber,
): Promise<{ block: Block; wished: BlockSource }> {
  const block = await readBlock(file, source);
  if (!through && !join && !split) return { block, wished: source };
  const { wishesOnMap } = await import('../block/wishes-by-number.js');
  const wished: BlockSource = { ...source, ...wishesOnMap(block.map, { through, join, split }) };
  return { block: await readBlock(file, wished), wished };
}

/** @throws InputError when an option is about color stops, and the block is a drawing */
export function refuseForDrawing(
  { existing }: Block,
  { path }: { readonly path: string },
  option: string,
): void {
  if (existing) return;
  throw new InputError(
    `${option.slice(2)}-of-drawing`,
    option,
    `${path} is a drawing and has no color stops`,
    `leave ${option} away`,
  );
}
