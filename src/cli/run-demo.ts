import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { dressFromFile } from './dress-from-file.js';
import { packageFolder } from './library.js';

/** Dresses the demo panel by its saved dressing; the outputs go to out/ in the folder in which the command runs. */
export async function runDemo(options: { json?: true }): Promise<void> {
  const folder = join(packageFolder, 'gallery', 'demo');
  const saved = join(folder, 'panel.dressing.json');
  mkdirSync('out', { recursive: true });
  const out = ['panel.dst', 'panel.svg', 'panel.txt'].map((name) => join('out', name));
  await dressFromFile(existsSync(saved) ? saved : join(folder, 'panel.svg'), { ...options, out });
}
