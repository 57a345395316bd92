import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { declareCheck } from './check-command.js';
import { declareDemo } from './demo-command.js';
import { declareDress } from './dress-command.js';
import { declareLibrary } from './library-command.js';
import { declarePage } from './page-command.js';
import { declarePattern } from './pattern-command.js';
import { declareSampler } from './sampler-command.js';
import { declareSeams } from './seams-command.js';
import { declareSheet } from './sheet-command.js';
import { refuseRepeated } from './single-options.js';
import { declareStitches } from './stitches-command.js';
import { declareSwatch } from './swatch-command.js';
import type { Terminal, TerminalOptions } from './terminal.js';
import { declareThreads } from './threads-command.js';

/** All commands in the order in which help lists them. */
const COMMANDS: Readonly<Record<string, (program: Command, terminal: Terminal) => void>> = {
  seams: declareSeams,
  dress: declareDress,
  check: declareCheck,
  threads: declareThreads,
  stitches: declareStitches,
  swatch: declareSwatch,
  sampler: declareSampler,
  sheet: declareSheet,
  pattern: declarePattern,
  library: declareLibrary,
  demo: declareDemo,
  page: declarePage,
};

/**
 * The whole command line. Every command loads what it needs only when it runs.
 * @param asked the first word: where that names a command the others need not be declared
 */
export function program(terminal: Terminal, asked = ''): Command {
  const command = new Command('seamwright')
    .description(
      'Dresses the seams of a crazy-patch block with hand-look stitches, each seam a color stop of its own.',
    )
    .version(packageVersion(), '--version', 'print the version')
    .exitOverride()
    .configureOutput({ writeErr: () => {} })
    .option('--quiet', 'do not show how far long work is')
    .option('--no-color', 'no color in reports; so does the environment variable NO_COLOR')
    .configureHelp({ showGlobalOptions: true })
    .hook('preAction', (root) => terminal.settle(root.opts<TerminalOptions>()));
  const declared = Object.hasOwn(COMMANDS, asked) ? [COMMANDS[asked]] : Object.values(COMMANDS);
  for (const declare of declared) declare(command, terminal);
  for (const one of command.commands) [one, ...one.commands].forEach(refuseRepeated);
  return command;
}

function packageVersion(): string {
  const url = new URL('../../package.json', import.meta.url);
  return (JSON.parse(readFileSync(url, 'utf8')) as { version: string }).version;
}
