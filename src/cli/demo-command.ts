import type { Command } from 'commander';
import type { Terminal } from './terminal.js';

/** `demo`: dresses the demo block and shows what comes of it. */
export function declareDemo(program: Command, terminal: Terminal): void {
  program
    .command('demo')
    .summary('dresses the demo block and writes the stitch file, a picture and the report to out/')
    .option('--json', 'print one JSON document')
    .action(async (options: { json?: true }) => {
      const { runDemo } = await import('./run-demo.js');
      await runDemo(options, terminal);
    });
}
