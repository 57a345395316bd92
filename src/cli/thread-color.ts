import { InputError } from '../input-error.js';

const colors = () => import('culori');

/** The thread color that a person wrote in any notation of CSS, as '#rrggbb'. */
export async function threadColor(word: string): Promise<string> {
  const { formatHex, parse } = await colors();
  const color = parse(word);
  if (color && (color.alpha ?? 1) === 1) return formatHex(color);
  throw new InputError(
    'bad-color',
    '--thread',
    `'${word}' is ${color ? 'not opaque' : 'no color'}`,
    'give one such as #7a2f3b or darkred',
  );
}
