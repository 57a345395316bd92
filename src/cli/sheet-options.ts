import type { Command } from 'commander';
import { InputError } from '../input-error.js';
import type { PaperName } from '../sheet/page-sizes.js';
import type { PictureSize } from '../sheet/picture-layout.js';
import { choiceOption } from './choices.js';

/** How a sheet is printed. */
export interface SheetOptions {
  readonly paper?: PaperName;
  readonly picture?: PictureSize;
}

export function declareSheetOptions(command: Command): Command {
  return command
    .option(
      '--paper <size>',
      'of the sheet (.pdf): a4 or letter (default: a4)',
      choiceOption('--paper', ['a4', 'letter']),
    )
    .option(
      '--picture <size>',
      'on the sheet: actual, or smaller where the page does not take it (default: smaller for what a sewing field takes)',
      choiceOption('--picture', ['actual', 'smaller']),
    );
}

/** @throws InputError when a sheet is described and none is asked for */
export function checkSheetOptions({ paper, picture }: SheetOptions, endings: readonly string[]): void {
  if ((!paper && !picture) || endings.includes('.pdf')) return;
  throw new InputError(
    'no-sheet',
    paper ? '--paper' : '--picture',
    'is about the sheet, and none is made',
    'name one with --out, such as --out sheet.pdf',
  );
}
