import {
  existsSync,
  lstatSync,
  readdirSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { InputError } from '../input-error.js';

/** Where something is to be written. */
export interface Named {
  readonly path: string;
  /** what the maker said for it to be written there, for messages (default: `--out` and the path) */
  readonly said?: string;
}

export interface Output extends Named {
  readonly content: string | Uint8Array;
}

const saidOf = ({ path, said = `--out ${path}` }: Named): string => said;

/**
 * Checks, before any work, that outputs can be written: the folder is there, the place is no folder, no output is an
 * input (through links too), no two are the same file.
 */
export function checkOutputs(outputs: readonly Named[], inputs: readonly string[]): void {
  const seen = new Map<string, string>();
  for (const output of outputs) {
    const { path } = output;
    const said = saidOf(output);
    const folder = dirname(path);
    if (!existsSync(folder) || !statSync(folder).isDirectory()) {
      throw new InputError(
        'no-such-folder',
        said,
        `there is no folder ${folder}`,
        'make it first or choose another',
      );
    }
    if (existsSync(path) && !statSync(path).isFile()) {
      throw new InputError('not-a-file', said, 'is not an ordinary file', 'name a file to write');
    }
    const input = inputs.find((other) => sameFile(path, other));
    if (input !== undefined) {
      throw new InputError('output-is-input', said, `is the input ${input} itself`, 'choose another name');
    }
    const place = settled(path, said);
    const twin = seen.get(place);
    if (twin !== undefined) {
      throw new InputError('output-twice', said, `is the same file as ${twin}`, 'name each output once');
    }
    seen.set(place, path);
  }
}

/**
 * Writes all outputs or none: every file is first written whole beside its place, then the report is printed, then all
 * are renamed. So nothing has changed when the disk, or standard output, turns out to be full. A file that stands behind
 * a link is replaced there, and the link stays.
 */
export async function writeOutputs(
  outputs: readonly Output[],
  report: () => Promise<void> = async () => {},
): Promise<void> {
  const written: { beside: string; place: string }[] = [];
  let at: string | null = null;
  try {
    for (const output of outputs) {
      at = saidOf(output);
      const place = settled(output.path, at);
      written.push({ beside: writtenBeside(place, output.content, written.length), place });
    }
    at = null;
    await report();
    written.forEach(({ beside, place }, i) => {
      at = saidOf(outputs[i]);
      renameSync(beside, place);
    });
  } catch (error) {
    for (const { beside } of written) rmSync(beside, { force: true });
    // The complaint names what the maker asked for, not the file beside it.
    throw error instanceof Error && at !== null ? Object.assign(error, { path: at }) : error;
  }
}

/**
 * Writes content to a new file in the folder of its place, and gives the file's name. A process that was killed may have
 * left one of a name; that one is passed over, and removed when it is old.
 */
function writtenBeside(place: string, content: string | Uint8Array, i: number): string {
  const folder = dirname(place);
  removeLeftBehind(folder);
  for (let attempt = 0; ; attempt++) {
    const beside = join(folder, `.seamwright-${process.pid}-${i + attempt * MOST_OUTPUTS}.part`);
    try {
      writeFileSync(beside, content, { flag: 'wx' });
      return beside;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EEXIST' && attempt < MOST_ATTEMPTS) continue;
      if (code !== 'EEXIST') rmSync(beside, { force: true });
      throw error;
    }
  }
}

const MOST_OUTPUTS = 100;
const MOST_ATTEMPTS = 100;
const PART = /^\.seamwright-\d+-\d+\.part$/;
/** A file is written and renamed in seconds: one this old was left behind, ms. */
const LEFT_BEHIND = 60 * 60 * 1000;

/** Removes what killed processes left in a folder; what cannot be removed stays. */
function removeLeftBehind(folder: string): void {
  try {
    for (const name of readdirSync(folder).filter((one) => PART.test(one))) {
      const path = join(folder, name);
      if (Date.now() - lstatSync(path).mtimeMs > LEFT_BEHIND) rmSync(path, { force: true });
    }
  } catch {
    // a folder that can be written in and not listed, or another process was faster
  }
}

function sameFile(a: string, b: string): boolean {
  if (!existsSync(a) || !existsSync(b)) return false;
  const [one, other] = [statSync(a, { bigint: true }), statSync(b, { bigint: true })];
  return (one.ino === other.ino && one.dev === other.dev) || realpathSync(a) === realpathSync(b);
}

/** More links than this lead in a circle; systems give up at 40 or earlier. */
const MOST_LINKS = 40;

/**
 * The path with all links followed, also where the file itself is not there yet.
 * @throws InputError when its folder is not there, its links lead in a circle or its name is too long
 */
function settled(path: string, said: string): string {
  let place = path;
  try {
    for (let links = 0; links <= MOST_LINKS; links++) {
      if (existsSync(place)) return realpathSync(place);
      place = join(realpathSync(dirname(place)), basename(place));
      if (!lstatSync(place, { throwIfNoEntry: false })?.isSymbolicLink()) return place;
      place = resolve(dirname(place), readlinkSync(place));
    }
  } catch (error) {
    throw Object.assign(error as Error, { path: said });
  }
  throw new InputError('link-circle', said, 'is a link that leads in a circle', 'choose another name');
}
