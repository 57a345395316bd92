import { basename } from 'node:path';
import type { Command } from 'commander';
import type { WishesByNumber } from '../block/wishes-by-number.js';
import type { BlockSource } from '../formats/dressing.js';
import { SNAP } from '../geometry/tolerances.js';
import { lengthOption, listOption } from './numbers.js';
import { checkOutputs, type Output, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { print, printJson, settleStatus } from './print.js';
import { readBlockFile } from './read-block.js';
import { meetingsOption } from './seam-options.js';
import { nameOption } from './single-options.js';

interface Options extends WishesByNumber {
  readonly stops?: number[];
  readonly snap: number;
  readonly out?: string;
  readonly json?: true;
}

/** `seams`: what was found in a block, with a numbered picture on request. */
export function declareSeams(program: Command): void {
  program
    .command('seams')
    .summary('what was found in a block: seams, junctions, patches')
    .description(
      'Lists the seams, junctions and patches of a block. For a stitch file without --stops, lists its color stops.',
    )
    .argument('<block>', 'a drawing (.svg) or a stitch file (.dst)')
    .option(
      '--stops <list>',
      'color stops of the stitch file that are the seams, such as 1,2',
      listOption('--stops'),
    )
    .option('--snap <mm>', 'ends nearer than this meet', lengthOption('--snap', 0, 5), SNAP)
    .option(
      '--through <seam@seam>',
      'who runs through where two seams meet, such as 4@3',
      meetingsOption('--through'),
    )
    .option('--join <seam@seam>', 'two seams are one line where they meet', meetingsOption('--join'))
    .option('--split <seam@seam>', 'a seam is two where it meets another', meetingsOption('--split'))
    .option('--out <file>', 'numbered picture: .svg or .png', nameOption('--out'))
    .option('--json', 'print one JSON document')
    .action(seams);
}

async function seams(path: string, options: Options): Promise<void> {
  const kind = options.out === undefined ? null : outputKind(options.out, ['.svg', '.png']);
  if (options.out !== undefined) checkOutputs([{ path: options.out }], [path]);
  const file = await readBlockFile(path, 'seams');
  if (file.kind === 'stitch-file' && !options.stops) return listStops(path, file.bytes, options);

  const source: BlockSource = { file: path, stops: options.stops ?? null, snap: options.snap, through: [] };
  const { blockAsWished } = await import('./work-from-options.js');
  const { block } = await blockAsWished(file, source, options);
  const outputs: Output[] = [];
  if (options.out !== undefined) {
    const { drawSeamMap } = await import('../draw/map-picture.js');
    const picture = drawSeamMap(block.map, block.name);
    outputs.push({ path: options.out, content: kind === '.png' ? await toPng(picture) : picture });
  }
  const { seamsJson } = await import('../block/seams-json.js');
  const { seamsText } = await import('../report/seams-text.js');
  await writeOutputs(outputs, () =>
    options.json
      ? printJson(seamsJson(block))
      : print(options.out === undefined ? seamsText(block) : `${seamsText(block)}\n\nMade ${options.out}`),
  );
  settleStatus(block.findings);
}

async function listStops(path: string, bytes: Uint8Array, options: Options): Promise<void> {
  if (options.out !== undefined) {
    const { InputError } = await import('../input-error.js');
    throw new InputError(
      'stops-missing',
      '--out',
      'a picture of the seams needs to know them',
      'name the color stops that are the seams with --stops',
    );
  }
  const { readDst } = await import('../formats/dst-read.js');
  const { stopsReport, stopsText } = await import('../report/stops-report.js');
  const report = stopsReport(readDst(bytes, basename(path)));
  await (options.json ? printJson(report) : print(stopsText(basename(path), report)));
}

async function toPng(picture: string): Promise<Uint8Array> {
  const { rasterize } = await import('./rasterize.js');
  return rasterize(picture);
}
