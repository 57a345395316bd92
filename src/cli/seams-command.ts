import { basename } from 'node:path';
import type { Command } from 'commander';
import type { Recognized, Role } from '../block/roles/role.js';
import type { WishesByNumber } from '../block/wishes-by-number.js';
import type { BlockSource } from '../formats/dressing.js';
import { SNAP } from '../geometry/tolerances.js';
import { declareBlockOptions } from './block-options.js';
import { checkOutputs, type Output, writeOutputs } from './output-files.js';
import { outputKind } from './outputs-option.js';
import { settleStatus } from './print.js';
import { readBlockFile } from './read-block.js';
import { recognizedIn } from './recognized.js';
import { nameOption } from './single-options.js';
import type { Terminal } from './terminal.js';

interface Options extends WishesByNumber {
  readonly stops?: number[];
  readonly role?: ReadonlyMap<number, Role>;
  readonly snap?: number;
  readonly out?: string;
  readonly stopsOut?: string;
  readonly json?: true;
}

/** `seams`: what was found in a block, with a numbered picture on request. */
export function declareSeams(program: Command, terminal: Terminal): void {
  const command = program
    .command('seams')
    .summary('what was found in a block: seams, junctions, patches')
    .description(
      'Lists the seams, junctions and patches of a block; of a stitch file also what its color stops were taken for.',
    )
    .argument('<block>', 'a drawing (.svg) or a stitch file (.dst)');
  declareBlockOptions(command)
    .option('--out <file>', 'numbered picture: .svg or .png', nameOption('--out'))
    .option(
      '--stops-out <file>',
      'picture of the color stops, each as what it was taken for',
      nameOption('--stops-out'),
    )
    .option('--json', 'print one JSON document')
    .action((path: string, options: Options) => seams(path, options, terminal));
}

async function seams(path: string, options: Options, terminal: Terminal): Promise<void> {
  const asked = [
    ['--out', options.out],
    ['--stops-out', options.stopsOut],
  ] as const;
  const pictures = asked.flatMap(([said, name]) =>
    name === undefined
      ? []
      : [{ path: name, said: `${said} ${name}`, kind: outputKind(name, ['.svg', '.png'], said) }],
  );
  checkOutputs(pictures, [path]);
  terminal.progress(0, 0, 'reading');
  const file = await readBlockFile(path, 'seams');
  const found = await recognizedIn(file, options);
  if (found && found.seams.length === 0) return listStops(path, file.bytes, found, options, terminal);

  const stops = options.stops ?? found?.seams ?? null;
  const source: BlockSource = { file: path, stops, snap: options.snap ?? SNAP, through: [] };
  const { blockAsWished } = await import('./work-from-options.js');
  const { block } = await blockAsWished(file, source, options);
  const draw = async (said: string): Promise<string> => {
    if (said.startsWith('--out'))
      return (await import('../draw/map-picture.js')).drawSeamMap(block.map, block.name, block.keepClear);
    if (!found) throw await noStops();
    return (await import('../draw/stops-picture.js')).drawStops(block, found.roles);
  };
  const outputs: Output[] = [];
  for (const { path: name, said, kind } of pictures) {
    const picture = await draw(said);
    outputs.push({ path: name, said, content: kind === '.png' ? await toPng(picture) : picture });
  }
  const { seamsJson } = await import('../block/seams-json.js');
  const { seamsText } = await import('../report/seams-text.js');
  const { stopsReport, stopsText } = await import('../report/stops-report.js');
  const report = found && block.existing ? stopsReport(block.existing, found) : null;
  const made = pictures.length ? [`Made ${pictures.map((one) => one.path).join(', ')}`] : [];
  const text = [
    ...(report ? [stopsText(basename(path), report)] : []),
    seamsText(block, terminal.paint),
    ...made,
  ].join('\n\n');
  await writeOutputs(outputs, () =>
    options.json ? terminal.printJson({ ...seamsJson(block), ...report }) : terminal.print(text),
  );
  settleStatus(block.findings);
}

async function noStops(): Promise<Error> {
  const { InputError } = await import('../input-error.js');
  return new InputError(
    'nothing-recognized',
    '--stops-out',
    'there are no color stops that were taken for anything',
    'give a stitch file, without --stops',
  );
}

/** Of a file in which no seam was found. */
async function listStops(
  path: string,
  bytes: Uint8Array,
  found: Recognized,
  options: Options,
  terminal: Terminal,
): Promise<void> {
  if (options.out !== undefined || options.stopsOut !== undefined) {
    const { InputError } = await import('../input-error.js');
    throw new InputError(
      'stops-missing',
      options.out === undefined ? '--stops-out' : '--out',
      'a picture of the seams needs to know them, and no color stop looks like a seam',
      'name the color stops that are the seams with --stops',
    );
  }
  const { readDst } = await import('../formats/dst-read.js');
  const { stopsReport, stopsText } = await import('../report/stops-report.js');
  const report = stopsReport(readDst(bytes, basename(path)), found);
  await (options.json ? terminal.printJson(report) : terminal.print(stopsText(basename(path), report)));
}

async function toPng(picture: string): Promise<Uint8Array> {
  const { rasterize } = await import('./rasterize.js');
  return rasterize(picture);
}
