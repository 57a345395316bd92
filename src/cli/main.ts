import { complain } from './complain.js';
import { helpInOneForm, program } from './program.js';
import { ownTerminal } from './terminal.js';

// A reader that has seen enough (a pager, `head`) closes the pipe: that is no fault of this program. Of other failures
// whoever prints learns as well, and tells them.
process.stdout.on('error', () => process.stdout.destroy());
process.stderr.on('error', () => {});

const terminal = ownTerminal();
const words = process.argv.slice(2);
const command = program(terminal, words[0]);
command.parseAsync(helpInOneForm(command, words), { from: 'user' }).catch((error: unknown) => {
  terminal.wipe();
  process.exitCode = complain(error);
});
