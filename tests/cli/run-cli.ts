import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, lstatSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const loader = pathToFileURL(join(root, 'node_modules/tsx/dist/loader.mjs')).href;

const newest = (files: readonly string[]): number => Math.max(...files.map((file) => statSync(file).mtimeMs));
const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' }).map((name) =>
  join(root, 'src', name),
);
const built = join(root, `dist/cli/whole-${process.version}-${process.platform}-${process.arch}.compiled`);
/** Whether the built command line is up to date, as in `npm test`. */
export const isPacked = existsSync(built) && newest([built]) > newest(sources);
/** That, else the sources, which start slower. */
const command = isPacked
  ? [join(root, 'dist/cli/seamwright.cjs')]
  : ['--import', loader, join(root, 'src/cli/main.ts')];

export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command line as a process of its own, in a folder. */
export const seamwright = (folder: string, ...words: string[]): Promise<Ran> => run(folder, words, false);

/** The same, with a reader that closes the pipe before anything was written to it. */
export const seamwrightUnread = (folder: string, ...words: string[]): Promise<Ran> =>
  run(folder, words, true);

function run(folder: string, words: readonly string[], unread: boolean): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...command, ...words], { cwd: folder });
    let stdout = '';
    let stderr = '';
    if (unread) child.stdout.destroy();
    child.stdout.setEncoding('utf8').on('data', (text) => {
      stdout += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text) => {
      stderr += text;
    });
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, stdout, stderr }));
  });
}

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'seamwright-'));
export const removeFolder = (folder: string): void => rmSync(folder, { recursive: true, force: true });

/** Every file of a folder with a digest of its bytes, to tell whether anything changed. */
export function contents(folder: string): Record<string, string> {
  const seen: Record<string, string> = {};
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()) {
    const path = join(folder, name);
    seen[name] = lstatSync(path).isFile()
      ? createHash('sha256').update(readFileSync(path)).digest('hex')
      : 'no file';
  }
  return seen;
}
