import type { Command } from 'commander';
import type { Role } from '../block/roles/role.js';
import type { SeamMeeting } from '../block/wishes-by-number.js';
import type { HandThread } from '../formats/dressing.js';
import type { Setting } from '../settings.js';
import type { FabricOption } from './fabric-option.js';
import type { GuideOptions } from './guide-options.js';
import type { HoopingOptions } from './hooping-options.js';
import { declareLimits, type LimitOptions } from './limits-option.js';
import type { PatchOptions } from './patch-options.js';
import { declarePictureOptions, type PictureOptions } from './picture-options.js';
import type { PinOption } from './pins-option.js';
import type { PlaceOptions } from './place-options.js';
import { declareSheetOptions, type SheetOptions } from './sheet-options.js';
import { nameOption } from './single-options.js';
import type { Terminal } from './terminal.js';
import { declareWorkOptions } from './work-options.js';

/** What `dress` was asked for on the command line; a saved dressing carries all but the outputs itself. */
export interface DressOptions
  extends PlaceOptions,
    GuideOptions,
    PatchOptions,
    HoopingOptions,
    PictureOptions,
    LimitOptions,
    SheetOptions {
  readonly stops?: number[];
  readonly role?: ReadonlyMap<number, Role>;
  readonly after?: number;
  readonly stitch?: string;
  readonly treatment?: string;
  readonly thread?: string;
  readonly seam?: number[];
  readonly bare?: number[];
  readonly set?: readonly Setting[];
  readonly through?: SeamMeeting[];
  readonly join?: SeamMeeting[];
  readonly split?: SeamMeeting[];
  readonly order?: (number | 'outline')[];
  readonly byHand?: number;
  readonly heavy?: HandThread;
  readonly repeat?: number;
  readonly width?: number;
  readonly ends?: 'tuck' | 'bevel' | 'short';
  readonly edge?: string;
  readonly outline?: 'trim' | 'join' | 'free';
  readonly snap?: number;
  readonly gap?: number;
  readonly fabric?: readonly FabricOption[];
  readonly mix?: true;
  readonly seed?: number;
  readonly threads?: number;
  readonly stash?: string;
  readonly pin?: readonly PinOption[];
  readonly library?: string;
  readonly save?: string;
  readonly embed?: true;
  readonly alone?: true;
  readonly out?: string[];
  readonly json?: true;
}

/** `dress`: the main job, from options or from a saved dressing. */
export function declareDress(program: Command, terminal: Terminal): void {
  const command = program
    .command('dress')
    .summary('fits stitches along the seams of a block and writes them as color stops')
    .description(
      'Fits stitches along the seams of a block, or works a saved dressing, and writes what --out names.',
    )
    .argument('<block>', 'a drawing (.svg), a stitch file (.dst) or a saved dressing (.dressing.json)');
  declareWorkOptions(command)
    .option('--save <file>', 'keep the work in a .dressing.json file', nameOption('--save'))
    .option('--embed', 'with --save: put the drawing itself into it')
    .option(
      '--out <file...>',
      'what to write: .dst, .svg, .png, .json (needle points), .dressing.json, .csv (color stops), .txt (report), .pdf (sew sheet)',
    )
    .option('--json', 'print one JSON document');
  declareSheetOptions(declareLimits(declarePictureOptions(command, 'thread'))).action(
    async (path: string, options: DressOptions) => {
      const { dressFromFile } = await import('./dress-from-file.js');
      await dressFromFile(path, options, terminal);
    },
  );
}
