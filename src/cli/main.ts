import { complain } from './complain.js';
import { program } from './program.js';
import { ownTerminal } from './terminal.js';

// A reader that has seen enough (a pager, `head`) closes the pipe: that is no fault of this program. Of other failures
// whoever prints learns as well, and tells them.
process.stdout.on('error', () => process.stdout.destroy());
process.stderr.on('error', () => {});

const terminal = ownTerminal();
program(terminal, process.argv[2])
  .parseAsync(process.argv)
  .catch((error: unknown) => {
    terminal.wipe();
    process.exitCode = complain(error);
  });
