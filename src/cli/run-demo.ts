import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { packageFolder } from './dictionary.js';
import { dressFromFile } from './dress-from-file.js';
import type { Terminal } from './terminal.js';

/** Dresses the demo panel by its saved dressing; the outputs go to out/ in the folder in which the command runs. */
export async function runDemo(options: { json?: true }, terminal: Terminal): Promise<void> {
  mkdirSync('out', { recursive: true });
  const out = ['panel.dst', 'panel.svg', 'panel.png', 'panel.txt', 'panel.pdf'].map((name) =>
    join('out', name),
  );
  await dressFromFile(
    join(packageFolder, 'gallery', 'demo', 'panel.dressing.json'),
    { ...options, out },
    terminal,
  );
}
