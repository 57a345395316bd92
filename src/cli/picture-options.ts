import type { Command } from 'commander';
import { SHOWN, type Shown } from '../draw/overlays/show.js';
import { InputError } from '../input-error.js';
import { listOption } from './numbers.js';

/** What pictures show, and up to where the work is sewn on them. */
export interface PictureOptions {
  readonly show?: ReadonlySet<Shown>;
  /** color stops of the file, from 1 */
  readonly stop?: readonly number[];
}

/** @param usual what pictures of this command show when nothing is said */
export function declarePictureOptions(command: Command, usual: Shown): Command {
  return command
    .option(
      '--show <what>',
      `what pictures show: thread, density (holes a mm2), layers (of thread), stops, holes, bare (seam), contrast (of thread and fabric), numbers, or several, such as density,numbers (default: ${usual})`,
      showOption,
    )
    .option(
      '--stop <list>',
      'color stops that are sewn on pictures, such as 1-6 for how the work stands after the sixth (default: all)',
      listOption('--stop'),
    );
}

function showOption(words: string): ReadonlySet<Shown> {
  const asked = words.split(',').map((word) => word.trim().toLowerCase());
  const unknown = asked.find((word) => !(SHOWN as readonly string[]).includes(word));
  if (unknown === undefined) return new Set(asked as Shown[]);
  throw new InputError(
    'bad-choice',
    '--show',
    `'${unknown}' is nothing that a picture shows`,
    `choose among ${SHOWN.join(', ')}, with commas between`,
  );
}

/** @throws InputError when pictures are described and none is asked for */
export function checkPictureOptions({ show, stop }: PictureOptions, endings: readonly string[]): void {
  if (!show && !stop) return;
  if (endings.some((ending) => ending === '.svg' || ending === '.png')) return;
  throw new InputError(
    'no-picture',
    show ? '--show' : '--stop',
    'says what a picture shows, and none is made',
    'name one with --out, such as --out work.png',
  );
}

/**
 * Which color stops are sewn on a picture; undefined where all are.
 * @throws InputError when there are fewer
 */
export function stopsShown({ stop }: PictureOptions, count: number): ReadonlySet<number> | undefined {
  if (!stop) return undefined;
  const missing = stop.find((one) => one > count);
  if (missing === undefined) return new Set(stop);
  throw new InputError(
    'no-such-stop',
    '--stop',
    `there is no color stop ${missing}`,
    count === 1 ? 'there is one, 1' : `give numbers from 1 to ${count}`,
  );
}

/** @throws InputError where seams or fabrics are to be shown of which nothing is known */
export function refuseSeamMarks({ show }: PictureOptions): void {
  if (show?.has('bare')) throw noSeams('bare', 'a stitch file tells no seams that could be bare');
  if (show?.has('contrast')) throw noSeams('contrast', 'a stitch file tells no colors of thread and fabric');
}

const noSeams = (show: Shown, why: string): InputError =>
  new InputError(
    'no-seams',
    `--show ${show}`,
    why,
    'check the dressing it was made from, or show density, layers, stops, holes, numbers',
  );
