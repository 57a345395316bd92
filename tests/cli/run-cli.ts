import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { lstatSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const loader = pathToFileURL(join(root, 'node_modules/tsx/dist/loader.mjs')).href;

export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command line from its sources as a process of its own, in a folder. */
export function seamwright(folder: string, ...words: string[]): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', loader, join(root, 'src/cli/main.ts'), ...words], {
      cwd: folder,
    });
    let stdout = '';
    let stderr = '';
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
