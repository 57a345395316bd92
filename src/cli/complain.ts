import { CommanderError } from 'commander';
import { errorsIn, InputError, shortened, wordsShortened } from '../input-error.js';

/** Words of the command line that cannot be used. */
export class WrongWords extends Error {
  /** @param command the one they were said to, such as 'seamwright library copy' */
  constructor(
    readonly command: string,
    override readonly cause: CommanderError,
  ) {
    super(cause.message);
  }
}

/**
 * Tells on standard error why the work was not done, in one line for each thing that is wrong: where, what is wrong, what
 * would be right.
 * Returns the exit status: 2, or 0 when what ended the command was a wish for help.
 */
export function complain(error: unknown): number {
  if (error instanceof CommanderError && error.exitCode === 0) return 0;
  const errors = error instanceof InputError ? errorsIn(error) : [error];
  for (const one of errors) process.stderr.write(`seamwright: ${oneLine(sentence(one))}\n`);
  if (process.env.SEAMWRIGHT_TRACE && error instanceof Error) process.stderr.write(`${error.stack}\n`);
  return 2;
}

function sentence(error: unknown): string {
  if (error instanceof InputError) return error.message;
  if (error instanceof WrongWords) return usage(error);
  const system = error as NodeJS.ErrnoException;
  if (system?.code && (system.path || system.syscall)) {
    const where = system.path ?? places[system.syscall!];
    if (where) return `${shortened(where)}: ${meaning[system.code] ?? `cannot be used (${system.code})`}`;
  }
  return `a fault of the program itself: ${error instanceof Error ? error.message : String(error)}; please report it with the command and the file`;
}

/** Commander's own messages read "error: unknown option '--outt'", then a line "(Did you mean --out?)". */
function usage({ command, cause }: WrongWords): string {
  if (cause.code === 'commander.help') return `command line: no command given; ${command} --help lists them`;
  const [wrong, hint] = cause.message.replace(/^error: /, '').split('\n');
  const right = hint
    ? hint.replace(/^\(Did you mean (.*)\?\)$/, 'did you mean $1?')
    : `${command} --help shows the way`;
  return `command line: ${wrong.replace(/\.$/, '')}; ${right}`;
}

/** What system errors mean for who gave the path. */
export const meaning: Readonly<Record<string, string>> = {
  EACCES: 'no permission; choose a place that you may read and write',
  EPERM: 'not permitted; choose a place that you may read and write',
  EROFS: 'the disk can only be read; choose another place',
  ENOSPC: 'the disk is full; make room or choose another place',
  ENOENT: 'does not exist; check the name',
  ENOTDIR: 'goes through something that is no folder; check the name',
  ELOOP: 'is a link that leads in a circle; name the file itself',
  EISDIR: 'is a folder; name a file',
  ENAMETOOLONG: 'the name is too long; choose a shorter one',
};

/** What a system call without a path was about. */
const places: Record<string, string> = { write: 'standard output', uv_cwd: 'the folder this runs in' };

// Control characters in a name could drive a terminal; they are shown as a mark.
const oneLine = (text: string): string =>
  wordsShortened(text.replace(/\s*[\r\n]+\s*/g, ' ').replace(/\p{Cc}/gu, '\u{fffd}')).trim();
