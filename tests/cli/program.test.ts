import { describe, expect, it } from 'vitest';
import { helpInOneForm, program } from '../../src/cli/program.js';
import { ownTerminal } from '../../src/cli/terminal.js';

const whole = program(ownTerminal());
const names = whole.commands.map((command) => command.name());
/** Every command as it is said: dress, ..., library copy, ... */
const said = whole.commands.flatMap((command) => [
  command.name(),
  ...command.commands.map((one) => `${command.name()} ${one.name()}`),
]);

describe('the command line', () => {
  it.each(names)('declares %s alone when that is the first word, with the same help', (name) => {
    const { commands } = program(ownTerminal(), name);
    expect(commands.map((command) => command.name())).toEqual([name]);
    const inWhole = whole.commands.find((command) => command.name() === name)!;
    expect(commands[0].helpInformation()).toBe(inWhole.helpInformation());
  });

  it.each(['help', '--quiet', 'dres', 'toString', ''])('declares every command after %s', (word) => {
    expect(program(ownTerminal(), word).commands.map((command) => command.name())).toEqual(names);
  });

  it.each(said)('takes a wish for help before %s, or before its last word, as one behind it', (name) => {
    const words = name.split(' ');
    const wished = [...words, '--help'];
    expect(helpInOneForm(whole, ['help', ...words])).toEqual(wished);
    expect(helpInOneForm(whole, [...words.slice(0, -1), 'help', words.at(-1)!])).toEqual(wished);
    expect(helpInOneForm(whole, wished)).toEqual(wished);
  });

  it('hands a command the words behind it as they are, be one of them "help"', () => {
    const words = ['--quiet', 'swatch', 'help', '--out', 'help'];
    expect(helpInOneForm(whole, words)).toEqual(words);
    expect(helpInOneForm(whole, ['help', 'dress', 'panel.svg'])).toEqual(['dress', '--help']);
  });

  it('keeps nothing behind a word that names no command, so that nothing else is complained of', () => {
    expect(helpInOneForm(whole, ['help', 'dres'])).toEqual(['dres']);
    expect(helpInOneForm(whole, ['dres', 'panel.svg', '--help'])).toEqual(['dres']);
    expect(helpInOneForm(whole, ['library', 'help', 'cop', 'feather'])).toEqual(['library', 'cop']);
  });
});
