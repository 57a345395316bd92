import { dirname, resolve } from 'node:path';
import type { Block } from '../block/block.js';
import { dress } from '../dress.js';
import type { BlockSource, Dressing, Guide } from '../formats/dressing.js';
import { SNAP } from '../geometry/tolerances.js';
import { InputError } from '../input-error.js';
import { askedOn } from './asked-for.js';
import { type LoadedDictionary, loadDictionary } from './dictionary.js';
import { type DressOptions, GUIDE_HEIGHT, GUIDE_LENGTH } from './dress-command.js';
import { dressedEndings, renderDressed } from './dressed-outputs.js';
import { decodeText, fileKind, readInput } from './input-file.js';
import { checkMixOptions, mixed } from './mix-options.js';
import { checkOutputs, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { print, printJson, sayUnread, settleStatus } from './print.js';
import { type BlockFile, blockFile, readBlock, readBlockFile } from './read-block.js';
import { threadColor } from './thread-color.js';

/** A block as read, what it is to be dressed in, and where its file is. */
interface Work {
  readonly block: Block;
  readonly dressing: Dressing;
  readonly blockPath: string;
  /** where and what it was read from; null when options made it */
  readonly saved: { readonly path: string; readonly text: string } | null;
}

/** What is wrong with a saved dressing names its file, and the line in it. */
async function inFile<T>(saved: Work['saved'], work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof InputError) || saved === null) throw error;
    const line = error.path.length
      ? ` line ${await (await import('../formats/json-place.js')).lineInJson(saved.text, error.path)},`
      : '';
    throw new InputError(error.code, `${saved.path}${line} ${error.where}`, error.wrong, error.right);
  }
}

/** Runs the main job on a block or a saved dressing, writes the outputs asked for and prints the report. */
export async function dressFromFile(path: string, options: DressOptions): Promise<void> {
  const outputs = (options.out ?? []).map((out) => ({ path: out, ending: outputKind(out, dressedEndings) }));
  const names = outputs.map((output) => output.path);
  checkOutputs(names, [path]);
  if (options.stitch !== undefined && options.treatment !== undefined) {
    throw new InputError(
      'two-asks',
      '--treatment',
      'stands beside --stitch',
      'name a stitch or a treatment, not both',
    );
  }
  checkMixOptions(options);
  const dictionary = await loadDictionary(options.library);
  const asked = async (shelf: 'stitches' | 'treatments', name: string | undefined) =>
    name && (await askedOn(dictionary, shelf, name)).name;
  const chosen = {
    ...options,
    stitch: await asked('stitches', options.stitch),
    edge: await asked('stitches', options.edge),
    treatment: await asked('treatments', options.treatment),
  };
  sayUnread(dictionary.unread);

  const bytes = await readInput(path);
  const work =
    fileKind(path, bytes) === 'record'
      ? await fromDressing(path, bytes, options)
      : await fromOptions(blockFile(path, bytes), chosen, dictionary);
  checkOutputs(names, [path, work.blockPath]);

  const mix = options.mix
    ? await inFile(work.saved, () =>
        mixed(work.block.map, work.dressing, work.saved !== null, options, dictionary),
      )
    : undefined;
  const dressed = await inFile(work.saved, () =>
    dress(work.block, mix?.dressing ?? work.dressing, dictionary),
  );
  const { dressReport } = await import('../report/dress-report.js');
  const report = dressReport(dressed, names, mix);
  const files = await inFile(work.saved, () =>
    Promise.all(outputs.map((output) => renderDressed(dressed, report, output, work.blockPath))),
  );
  await writeOutputs(files, async () =>
    options.json ? printJson(report) : print((await import('../report/dress-text.js')).dressText(report)),
  );
  settleStatus(report.findings);
}

/** A dressing made from options: where none says otherwise, stitches are chosen seam by seam. */
async function fromOptions(
  file: BlockFile,
  options: DressOptions,
  dictionary: LoadedDictionary,
): Promise<Work> {
  const source: BlockSource = {
    file: file.path,
    stops: options.stops ?? null,
    snap: options.snap ?? SNAP,
    through: [],
  };
  const block = await readBlock(file, source);
  if (options.after !== undefined && !block.existing) {
    throw new InputError(
      'after-of-drawing',
      '--after',
      `${file.path} is a drawing and has no color stops`,
      'leave --after away',
    );
  }
  const { defaultDressing } = await import('../plan.js');
  const dressing = defaultDressing(block.map, {
    source,
    dictionary,
    stitch: options.stitch,
    treatment: options.treatment === undefined ? undefined : dictionary.treatments.get(options.treatment),
    // what mixing dresses it chooses itself
    seams: options.mix ? [] : options.seam,
    repeat: options.repeat,
    width: options.width,
    ends: options.ends,
    edge: options.edge,
    guide: guideAsked(options),
    outline: options.outline,
    gap: options.gap,
    after: options.after,
    thread: options.thread === undefined ? undefined : await threadColor(options.thread),
    seed: options.seed,
  });
  return { block, dressing, blockPath: file.path, saved: null };
}

/** @throws InputError when a height or length is given for no guide line, or one that no thread could follow */
function guideAsked({ guide, guideHeight, guideLength }: DressOptions): Guide | undefined {
  if (guide === undefined) {
    for (const [option, value] of [
      ['--guide-height', guideHeight],
      ['--guide-length', guideLength],
    ] as const) {
      if (value === undefined) continue;
      throw new InputError(
        'no-guide',
        option,
        'there is no guide line to give it to',
        'name one with --guide',
      );
    }
    return undefined;
  }
  const length = guideLength ?? GUIDE_LENGTH;
  const height = guideHeight ?? Math.min(GUIDE_HEIGHT, length / 4);
  if (height > length / 2) {
    throw new InputError(
      'guide-too-steep',
      `--guide-height ${height}`,
      'no thread could follow so steep a line',
      `with --guide-length ${length} it takes up to ${length / 2} mm`,
    );
  }
  return { shape: guide, height, length };
}

/** Options that a saved dressing carries itself. */
const carried = [
  'stops',
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
  'snap',
  'gap',
  'seed',
] as const;

/** Of these the ones that tell how it is to be mixed again. */
const ofMixing: ReadonlySet<string> = new Set(['seam', 'seed']);

async function fromDressing(path: string, bytes: Uint8Array, options: DressOptions): Promise<Work> {
  const option = carried.find((name) => options[name] !== undefined && !(options.mix && ofMixing.has(name)));
  if (option !== undefined) {
    throw new InputError(
      'option-of-dressing',
      `--${option.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`,
      `${path} is a saved dressing and says this itself`,
      'change it there, or dress the block',
    );
  }
  const { readDressing } = await import('../formats/dressing-file.js');
  const text = decodeText(bytes, path);
  const dressing = await readDressing(text, path);
  const saved = { path, text };
  const blockPath = resolve(dirname(path), dressing.block.file);
  const file = await inFile(saved, () => asBlock(readBlockFile(blockPath)));
  const { stops } = dressing.block;
  if ((file.kind === 'stitch-file') !== (stops !== null)) {
    const isDrawing = stops !== null;
    await inFile(saved, () => {
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
  const block = await readBlock(file, dressing.block);
  return { block, dressing, blockPath, saved };
}

/** What is wrong with a block's file itself, as a mistake of the dressing that names it. */
async function asBlock(file: Promise<BlockFile>): Promise<BlockFile> {
  try {
    return await file;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.code, `block ${error.where}`, error.wrong, error.right, ['block', 'file']);
  }
}
