import { InputError } from '../input-error.js';

/** The ending of an output decides what it is; one that the command does not make is refused before any work. */
export function outputKind<Ending extends string>(
  path: string,
  endings: readonly Ending[],
  option = '--out',
): Ending {
  if (path.trim() === '') {
    throw new InputError(
      'empty-name',
      option,
      'is given no name',
      `name a file that ends in ${listed(endings)}`,
    );
  }
  const name = path.toLowerCase();
  const fitting = endings.filter((ending) => name.endsWith(ending)).sort((a, b) => b.length - a.length);
  if (fitting.length && name.length > fitting[0].length && !/[\\/]$/.test(name.slice(0, -fitting[0].length)))
    return fitting[0];
  const wrong = fitting.length ? 'has an ending but no name' : `this command makes no such file`;
  throw new InputError(
    'bad-output',
    `${option} ${path}`,
    wrong,
    `choose a name that ends in ${listed(endings)}`,
  );
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`;
