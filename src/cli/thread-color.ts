import { InputError } from '../input-error.js';

const colors = () => import('culori');

/**
 * The thread color that a person wrote in any notation of CSS, as '#rrggbb'.
 * @param where what the person said it with
 */
export async function threadColor(word: string, where = '--thread'): Promise<string> {
  const { formatHex, parse } = await colors();
  const color = parse(word);
  if (color && (color.alpha ?? 1) === 1) return formatHex(color);
  throw new InputError(
    'bad-color',
    where,
    `'${word}' is ${color ? 'not opaque' : 'no color'}`,
    'give one such as #7a2f3b or darkred',
  );
}
