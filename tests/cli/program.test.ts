import { describe, expect, it } from 'vitest';
import { program } from '../../src/cli/program.js';
import { ownTerminal } from '../../src/cli/terminal.js';

const whole = program(ownTerminal());
const names = whole.commands.map((command) => command.name());

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
});
