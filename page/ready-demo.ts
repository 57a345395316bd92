import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { type Plugin, runnerImport } from 'vite';

const NAME = 'virtual:ready';

/**
 * The page opens with a picture that is there already: the demo block, dressed by the same core that goes on from there,
 * once, when the page is built. Importing it gives its text.
 */
export const readyDemo = (): Plugin => ({
  name: 'ready-demo',
  resolveId: (id) => (id === NAME ? `\0${NAME}` : null),
  async load(id) {
    if (id !== `\0${NAME}`) return null;
    const made = join(import.meta.dirname, 'core/ready-text.ts');
    const { module } = await runnerImport<typeof import('./core/ready-text.js')>(made);
    const stamp = createHash('sha256').update(module.readyText).digest('base64url');
    return `export default ${JSON.stringify(module.readyText)}; export const stamp = '${stamp}'`;
  },
});
