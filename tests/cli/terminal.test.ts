import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { type Screen, Terminal, type TerminalOptions } from '../../src/cli/terminal.js';
import { dress } from '../../src/dress.js';
import { defaultDressing } from '../../src/plan.js';
import { lookHere } from '../../src/report/look-here.js';
import { builtIn } from '../stitches/dictionary.js';
import { seamwright } from './run-cli.js';

interface Fake extends Screen {
  written: string[];
}
const fake = (isTTY: boolean, columns?: number): Fake => {
  const written: string[] = [];
  return { isTTY, columns, written, write: (text) => written.push(text) };
};

/** A run on given screens, with a clock that is set by hand. */
function run(out: Fake, beside: Fake, options: TerminalOptions = {}, env: Record<string, string> = {}) {
  const time = { now: 0 };
  const terminal = new Terminal(out, beside, env, () => time.now);
  terminal.settle(options);
  return {
    terminal,
    tell: (at: number, done: number, total: number, what: string) => {
      time.now = at;
      terminal.progress(done, total, what);
    },
  };
}
/** What a terminal shows in its line after all that was written to it: CR goes to its start, EL wipes it (ECMA-48). */
const shown = (written: readonly string[]): string => written.join('').split('\r\u001b[K').at(-1)!;

describe('how far long work is', () => {
  it('is told in one line, which step and how much of it, and wiped at the end', () => {
    const beside = fake(true);
    const { terminal, tell } = run(fake(true), beside);
    tell(600, 0, 0, 'reading');
    expect(shown(beside.written)).toBe('reading');
    tell(800, 12, 140, 'fitting seams');
    expect(shown(beside.written)).toBe('fitting seams 12 of 140');
    terminal.wipe();
    expect(shown(beside.written)).toBe('');
    expect(beside.written.join('')).not.toContain('\n');
  });

  it('is not told of work that is done in half a second, and nothing is wiped then', () => {
    const beside = fake(true);
    const { terminal, tell } = run(fake(true), beside);
    for (const at of [0, 100, 300, 499]) tell(at, at, 500, 'sewing seams');
    terminal.wipe();
    expect(beside.written).toEqual([]);
  });

  it('changes no faster than can be read, however many parts there are', () => {
    const beside = fake(true);
    const { tell } = run(fake(true), beside);
    for (let at = 0; at <= 1500; at++) tell(at, at, 1500, 'fitting seams');
    expect(beside.written.length).toBeGreaterThan(5);
    expect(beside.written.length).toBeLessThan(15);
  });

  it.each([
    ['standard error is no terminal', false, {}, {}],
    ['--quiet is said', true, { quiet: true }, {}],
    ['the terminal cannot wipe a line', true, {}, { TERM: 'dumb' }],
  ])('is not told where %s', (_, isTTY, options, env: Record<string, string>) => {
    const beside = fake(isTTY);
    const { terminal, tell } = run(fake(true), beside, options, env);
    tell(5000, 3, 9, 'sewing seams');
    terminal.wipe();
    expect(beside.written).toEqual([]);
  });

  it('is told once to whoever waits for long work, seen or not', () => {
    const time = { now: 0 };
    let told = 0;
    const terminal = new Terminal(
      fake(true),
      fake(false),
      {},
      () => time.now,
      () => told++,
    );
    const after = [100, 499, 501, 502, 900].map((at) => {
      time.now = at;
      terminal.progress(at, 1000, 'sewing seams');
      return told;
    });
    expect(after).toEqual([0, 0, 1, 1, 1]);
  });

  it('never breaks over two lines, which could not be wiped', () => {
    const beside = fake(true, 20);
    const { tell } = run(fake(true), beside);
    tell(600, 1000, 2000, 'fitting seams of a great block');
    expect(shown(beside.written)).toHaveLength(19);
  });

  it('is told by the main job line by line, and changes nothing of what comes of it', async () => {
    const source = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
    const drawing = readFileSync(new URL('../../gallery/demo/panel.svg', import.meta.url), 'utf8');
    const block = await readSvgBlock(drawing, 'panel.svg', source);
    const dressing = defaultDressing(block.map, { source, dictionary: builtIn });
    const told: [number, number, string][] = [];
    const dressed = dress(block, dressing, builtIn, (...step) => told.push(step));
    expect(dressed).toEqual(dress(block, dressing, builtIn));
    for (const what of ['fitting seams', 'sewing seams']) {
      const steps = told.filter(([, , step]) => step === what);
      expect(steps.every(([done, total]) => done >= 0 && done < total && total === 11)).toBe(true);
      expect(new Set(steps.map(([done]) => done)).size).toBe(11);
    }
  });
});

/** Changes of look, each with the text that follows it (SGR: ECMA-48, 8.3.117). */
const looks = (text: string): string[][] =>
  text
    .split('\u001b[')
    .slice(1)
    .map((part) => [part.slice(0, part.indexOf('m')), part.slice(part.indexOf('m') + 1)]);
/** The text without them. */
const bare = (text: string): string =>
  text.split('\u001b[')[0] +
  looks(text)
    .map(([, rest]) => rest)
    .join('');

describe('color in a report', () => {
  const findings = (['error', 'warning', 'note'] as const).map((level) => ({
    level,
    code: 'a',
    message: level,
  }));
  const report = (out: Fake, options: TerminalOptions, env: Record<string, string>) =>
    lookHere(findings, run(out, fake(false), options, env).terminal.paint);
  const plain = lookHere(findings);

  it('is on the words for levels, on a terminal; the words are there all the same', () => {
    const colored = report(fake(true), {}, {});
    // 31 red, 33 yellow, 36 cyan, 39 as usual
    const words = looks(colored).filter(([code]) => code !== '39');
    expect(words.map(([code, word]) => [code, word.trim()])).toEqual([
      ['31', 'wrong'],
      ['33', 'mind'],
      ['36', 'note'],
    ]);
    expect(bare(colored)).toBe(plain);
  });

  it.each([
    ['standard output is no terminal', false, {}, {}],
    ['--no-color is said', true, { color: false }, {}],
    // no-color.org: "when present and not an empty string (regardless of its value)": from memory
    ['NO_COLOR is set', true, {}, { NO_COLOR: '0' }],
    ['the terminal has none', true, {}, { TERM: 'dumb' }],
  ])('is nowhere where %s', (_, isTTY, options, env: Record<string, string>) => {
    expect(report(fake(isTTY), options, env)).toBe(plain);
  });

  it('is there where NO_COLOR is set to nothing', () => {
    expect(report(fake(true), {}, { NO_COLOR: '' })).not.toBe(plain);
  });
});

describe('the options for it', () => {
  it('are taken before and after the command, and change nothing where nobody watches', async () => {
    const before = await seamwright('.', '--quiet', '--no-color', 'stitches', 'feather');
    const after = await seamwright('.', 'stitches', 'feather', '--no-color', '--quiet');
    const without = await seamwright('.', 'stitches', 'feather');
    expect([before, after]).toEqual([without, without]);
    expect([without.status, without.stderr]).toEqual([0, '']);
  }, 60_000);
});
