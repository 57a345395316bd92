import type { Command } from 'commander';
import { InputError } from '../input-error.js';

/** Parser of an option that is a name. */
export function nameOption(option: string): (word: string) => string {
  return (word) => {
    if (word.trim() !== '') return word;
    throw new InputError('empty-name', option, 'is given no name', 'name one, or leave it away');
  };
}

/** Options that hold one value can be given once only: of two nobody could tell which is meant. */
export function refuseRepeated(command: Command): void {
  for (const option of command.options) {
    if (option.isBoolean() || option.variadic) continue;
    const parse: (word: string, before: unknown) => unknown = option.parseArg ?? ((word) => word);
    let given = false;
    option.argParser((word, before) => {
      if (given)
        throw new InputError('given-twice', option.long ?? option.flags, 'is given twice', 'give it once');
      given = true;
      return parse(word, before);
    });
  }
}
