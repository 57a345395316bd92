import { existsSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { InputError } from '../input-error.js';

export interface Output {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/**
 * Checks, before any work, that outputs can be written: the folder is there, the place is no folder, no output is an
 * input (through links too), no two are the same file.
 */
export function checkOutputs(outputs: readonly string[], inputs: readonly string[]): void {
  const seen = new Map<string, string>();
  for (const path of outputs) {
    const folder = dirname(path);
    if (!existsSync(folder) || !statSync(folder).isDirectory()) {
      throw new InputError(
        'no-such-folder',
        `--out ${path}`,
        `there is no folder ${folder}`,
        'make it first or choose another',
      );
    }
    if (existsSync(path) && !statSync(path).isFile()) {
      throw new InputError('not-a-file', `--out ${path}`, 'is not an ordinary file', 'name a file to write');
    }
    const input = inputs.find((other) => sameFile(path, other));
    if (input !== undefined) {
      throw new InputError(
        'output-is-input',
        `--out ${path}`,
        `is the input ${input} itself`,
        'choose another name',
      );
    }
    const place = settled(path);
    const twin = seen.get(place);
    if (twin !== undefined) {
      throw new InputError(
        'output-twice',
        `--out ${path}`,
        `is the same file as ${twin}`,
        'name each output once',
      );
    }
    seen.set(place, path);
  }
}

/**
 * Writes all outputs or none: every file is first written whole beside its place, then all are renamed. A file that
 * stands behind a link is replaced there, and the link stays.
 */
export function writeOutputs(outputs: readonly Output[]): void {
  const written: { beside: string; place: string }[] = [];
  let at = '';
  try {
    for (const { path, content } of outputs) {
      at = path;
      const place = settled(path);
      const beside = join(dirname(place), `.${basename(place)}.${process.pid}.part`);
      written.push({ beside, place });
      writeFileSync(beside, content, { flag: 'wx' });
    }
    for (const { beside, place } of written) renameSync(beside, place);
  } catch (error) {
    for (const { beside } of written) rmSync(beside, { force: true });
    // The complaint names what the maker asked for, not the file beside it.
    throw error instanceof Error ? Object.assign(error, { path: `--out ${at}` }) : error;
  }
}

function sameFile(a: string, b: string): boolean {
  if (!existsSync(a) || !existsSync(b)) return false;
  const [one, other] = [statSync(a, { bigint: true }), statSync(b, { bigint: true })];
  return (one.ino === other.ino && one.dev === other.dev) || realpathSync(a) === realpathSync(b);
}

/** The path with all links followed, also where the file itself is not there yet. */
function settled(path: string): string {
  return existsSync(path) ? realpathSync(path) : join(realpathSync(dirname(path)), basename(path));
}
