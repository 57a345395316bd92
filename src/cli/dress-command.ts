import type { Command } from 'commander';
import { SNAP } from '../geometry/tolerances.js';
import { choiceOption } from './choices.js';
import { libraryHelp } from './library-option.js';
import { countOption, lengthOption, listOption } from './numbers.js';
import { type PinOption, pinsOption } from './pins-option.js';
import { nameOption } from './single-options.js';

/** A gentle wave that most stitches can follow, mm. Common practice. */
export const GUIDE_HEIGHT = 5;
export const GUIDE_LENGTH = 24;

/** What `dress` was asked for on the command line; a saved dressing carries all but the outputs itself. */
export interface DressOptions {
  readonly stops?: number[];
  readonly after?: number;
  readonly stitch?: string;
  readonly treatment?: string;
  readonly thread?: string;
  readonly seam?: number[];
  readonly repeat?: number;
  readonly width?: number;
  readonly ends?: 'tuck' | 'bevel' | 'short';
  readonly edge?: string;
  readonly guide?: 'wave' | 'scallop' | 'points' | 'interlace';
  readonly guideHeight?: number;
  readonly guideLength?: number;
  readonly outline?: 'trim' | 'join' | 'free';
  readonly snap?: number;
  readonly gap?: number;
  readonly mix?: true;
  readonly seed?: number;
  readonly threads?: number;
  readonly pin?: readonly PinOption[];
  readonly library?: string;
  readonly out?: string[];
  readonly json?: true;
}

/** `dress`: the main job, from options or from a saved dressing. */
export function declareDress(program: Command): void {
  program
    .command('dress')
    .summary('fits stitches along the seams of a block and writes them as color stops')
    .description(
      'Fits stitches along the seams of a block, or works a saved dressing, and writes what --out names.',
    )
    .argument('<block>', 'a drawing (.svg), a stitch file (.dst) or a saved dressing (.dressing.json)')
    .option(
      '--stops <list>',
      'color stops of the stitch file that are the seams, such as 1,2',
      listOption('--stops'),
    )
    .option(
      '--after <n>',
      'put the new stops in after this one (default: the last of --stops)',
      countOption('--after', 1, 999),
    )
    .option(
      '--stitch <name>',
      'one stitch for all seams (default: chosen seam by seam)',
      nameOption('--stitch'),
    )
    .option('--treatment <name>', 'one saved treatment for all seams, instead', nameOption('--treatment'))
    .option('--thread <color>', 'color of the new stops, such as #7a2f3b or darkred', nameOption('--thread'))
    .option('--seam <list>', 'dress these seams only, such as 1,4-6', listOption('--seam'))
    .option('--repeat <mm>', 'wanted length of a repeat', lengthOption('--repeat', 1, 60))
    .option('--width <mm>', 'width of the stitch across the seam', lengthOption('--width', 1, 40))
    .option(
      '--ends <manner>',
      'where a seam butts into another: tuck, bevel or short',
      choiceOption('--ends', ['tuck', 'bevel', 'short']),
    )
    .option('--edge <name>', 'stitch for the outline too', nameOption('--edge'))
    .option(
      '--guide <shape>',
      'stitch on a line drawn along the seams: wave, scallop, points or interlace (two lines)',
      choiceOption('--guide', ['wave', 'scallop', 'points', 'interlace']),
    )
    .option(
      '--guide-height <mm>',
      `from its lowest to its highest point (default: ${GUIDE_HEIGHT})`,
      lengthOption('--guide-height', 0.5, 40),
    )
    .option(
      '--guide-length <mm>',
      `of one wave along the seam (default: ${GUIDE_LENGTH})`,
      lengthOption('--guide-length', 2, 200),
    )
    .option(
      '--outline <kind>',
      'what becomes of the outline: trim, join or free',
      choiceOption('--outline', ['trim', 'join', 'free']),
    )
    .option('--snap <mm>', `ends nearer than this meet (default: ${SNAP})`, lengthOption('--snap', 0, 5))
    .option('--gap <mm>', 'clear cloth between bands at a junction', lengthOption('--gap', 0, 10))
    .option('--mix', 'dress the whole block from the library, no two that meet alike')
    .option(
      '--seed <n>',
      'another number, another block; the same one, the same (default: 1)',
      countOption('--seed', 0, 999_999_999),
    )
    .option(
      '--threads <n>',
      'with --mix: so many threads (default: 1, old gold)',
      countOption('--threads', 1, 12),
    )
    .option(
      '--pin <seam=name...>',
      'with --mix: what a seam has in any case, such as 3=feather',
      pinsOption('--pin'),
    )
    .option('--library <folder>', libraryHelp, nameOption('--library'))
    .option(
      '--out <file...>',
      'what to write: .dst, .svg, .png, .json (needle points), .dressing.json, .txt (report)',
    )
    .option('--json', 'print one JSON document')
    .action(async (path: string, options: DressOptions) => {
      const { dressFromFile } = await import('./dress-from-file.js');
      await dressFromFile(path, options);
    });
}
