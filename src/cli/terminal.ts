import type { EventEmitter } from 'node:events';
import util from 'node:util';
import type { Level } from '../finding.js';
import type { Progress } from '../progress.js';
import type { Paint } from '../report/look-here.js';
import { print } from './print.js';

/** Where text goes: a terminal, or a file or another program. */
export interface Screen {
  readonly isTTY?: boolean;
  readonly columns?: number;
  write(text: string): unknown;
}

/** What a maker can say of how a run talks. */
export interface TerminalOptions {
  readonly quiet?: boolean;
  /** false: none, wherever the report goes */
  readonly color?: boolean;
}

/** Work shorter than this is done before anybody wonders, ms. */
const SOON = 500;
/** The launcher, launcher/seamwright.cjs, listens for this. */
const LONG = 'long work';
/** No line is changed more often than this, ms: it could not be read, and writing takes time too. */
const LEAST_BETWEEN = 80;
/** To the start of the line, and all of it wiped (ECMA-48: CR, and EL "erase in line"). */
const WIPE = '\r\u001b[K';

const COLORS = { error: 'red', warning: 'yellow', note: 'cyan' } as const satisfies Record<Level, string>;

/**
 * How a run talks to whoever started it: reports on standard output, how far long work is on standard error. That is one
 * line that is wiped before anything else is written; it is shown on a terminal alone.
 */
export class Terminal {
  private options: TerminalOptions = {};
  private isShown = false;
  private isLong = false;
  private last: number;
  private readonly begun: number;

  constructor(
    private readonly out: Screen,
    private readonly beside: Screen,
    private readonly env: Readonly<Record<string, string | undefined>>,
    /** ms, from any moment on */
    private readonly clock: () => number,
    /** told once when work turns out to be long */
    private readonly whenLong: () => void = () => {},
  ) {
    this.begun = clock();
    this.last = Number.NEGATIVE_INFINITY;
  }

  /** What the maker said, once the command line is read. */
  settle(options: TerminalOptions): void {
    this.options = options;
  }

  readonly progress: Progress = (done, total, what) => {
    const now = this.clock();
    if (now - this.begun < SOON) return;
    if (!this.isLong) this.whenLong();
    this.isLong = true;
    if (!this.beside.isTTY || this.options.quiet || this.env.TERM === 'dumb') return;
    if (now - this.last < LEAST_BETWEEN) return;
    this.last = now;
    const line = total > 0 ? `${what} ${done} of ${total}` : what;
    // a line that breaks could not be wiped
    this.beside.write(WIPE + line.slice(0, Math.max(0, (this.beside.columns || 80) - 1)));
    this.isShown = true;
  };

  /** Takes the line of progress away. */
  wipe(): void {
    if (this.isShown) this.beside.write(WIPE);
    this.isShown = false;
  }

  /** The words of findings in color where a terminal shows them and nobody asks for none (no-color.org: NO_COLOR, set and not empty). */
  get paint(): Paint | undefined {
    const isPlain = this.options.color === false || this.env.NO_COLOR || this.env.TERM === 'dumb';
    // before Node 20.12 there is no styleText
    if (!this.out.isTTY || isPlain || !util.styleText) return undefined;
    return (level, word) => util.styleText(COLORS[level], word, { validateStream: false });
  }

  /** Prints text on standard output, where no line of progress stands any more. */
  print(text: string): Promise<void> {
    this.wipe();
    return print(text);
  }

  printJson(document: unknown): Promise<void> {
    return this.print(JSON.stringify(document));
  }
}

/** The terminal of this process, which tells whoever listens to the process that its work is long. */
export const ownTerminal = (): Terminal =>
  new Terminal(
    process.stdout,
    process.stderr,
    process.env,
    // `performance` would have to be loaded
    () => 1000 * process.uptime(),
    () => (process as EventEmitter).emit(LONG),
  );
