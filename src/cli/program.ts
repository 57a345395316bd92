import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { declareCheck } from './check-command.js';
import { WrongWords } from './complain.js';
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
    .configureOutput({ writeErr: () => {} })
    .option('--quiet', 'do not show how far long work is')
    .option('--no-color', 'no color in reports; so does the environment variable NO_COLOR')
    .configureHelp({ showGlobalOptions: true })
    .hook('preAction', (root) => terminal.settle(root.opts<TerminalOptions>()));
  const declared = Object.hasOwn(COMMANDS, asked) ? [COMMANDS[asked]] : Object.values(COMMANDS);
  for (const declare of declared) declare(command, terminal);
  for (const one of [command, ...command.commands.flatMap((group) => [group, ...group.commands])]) {
    refuseRepeated(one);
    one.exitOverride((error) => {
      throw error.exitCode === 0 ? error : new WrongWords(fullName(one), error);
    });
  }
  return command;
}

const fullName = (command: Command): string =>
  command.parent ? `${fullName(command.parent)} ${command.name()}` : command.name();

/**
 * The words with a wish for help in one form, `library copy --help`, which may be said as `help library copy` and
 * `library help copy` too. They end with the first that names no command, which is complained of: what stands behind it
 * belongs to nothing.
 */
export function helpInOneForm(program: Command, words: readonly string[]): readonly string[] {
  const kept: string[] = [];
  let command = program;
  let isWished = false;
  for (const word of words) {
    if (command.commands.length === 0) break;
    if (word === 'help') {
      isWished = true;
      continue;
    }
    kept.push(word);
    if (word.startsWith('-')) continue;
    const next = command.commands.find((one) => one.name() === word);
    if (!next) return kept;
    command = next;
  }
  return isWished ? [...kept, '--help'] : words;
}

function packageVersion(): string {
  const url = new URL('../../package.json', import.meta.url);
  return (JSON.parse(readFileSync(url, 'utf8')) as { version: string }).version;
}
