#!/usr/bin/env node
import { complain } from './complain.js';
import { program } from './program.js';

// A reader that has seen enough (a pager, `head`) closes the pipe: that is no fault of this program.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') process.exitCode = complain(error);
  process.stdout.destroy();
});
process.stderr.on('error', () => {});

try {
  await program().parseAsync(process.argv);
} catch (error) {
  process.exitCode = complain(error);
}
