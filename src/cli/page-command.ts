import type { Command } from 'commander';
import { countOption } from './numbers.js';

/** `page`: the browser page, served on this machine alone. */
export function declarePage(program: Command): void {
  program
    .command('page')
    .summary('serves the browser page on this machine and prints its address')
    .option('--port <n>', 'where (default: any that is free)', countOption('--port', 1, 65535))
    .option('--open', 'open it in the browser')
    .option('--json', 'print one JSON document')
    .action(async (options: { port?: number; open?: true; json?: true }) => {
      const { servePage } = await import('./serve-page.js');
      await servePage(options);
    });
}
