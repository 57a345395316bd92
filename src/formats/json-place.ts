import { firstOf, InputError, InputErrors } from '../input-error.js';

const SENTENCES: Record<string, string> = {
  InvalidSymbol: 'this is no JSON word',
  InvalidNumberFormat: 'this is no number',
  PropertyNameExpected: 'a name in double quotes is missing',
  ValueExpected: 'a value is missing',
  ColonExpected: 'a colon is missing',
  CommaExpected: 'a comma is missing',
  CloseBraceExpected: 'a closing brace is missing',
  CloseBracketExpected: 'a closing bracket is missing',
  EndOfFileExpected: 'something follows behind the end',
  InvalidCommentToken: 'JSON has no comments',
  UnexpectedEndOfComment: 'JSON has no comments',
  UnexpectedEndOfString: 'a closing quote is missing',
  UnexpectedEndOfNumber: 'a number is cut off',
  InvalidUnicode: 'an escape in a text is cut off',
  InvalidEscapeCharacter: 'a text has an escape that JSON does not know',
  InvalidCharacter: 'a text has a line end or control character in it',
};

/**
 * What to say of JSON text that does not parse: every line on which it goes wrong, with the column, and the first thing
 * that is wrong there; what else is wrong in a line mostly follows from that. JSON.parse itself names the place in some cases
 * only, and in words that differ between engines.
 * @param right what the text should be
 */
export async function notJson(text: string, where: string, right: string): Promise<InputError> {
  const { parse, printParseErrorCode } = await import('jsonc-parser');
  const errors: { error: number; offset: number; length: number }[] = [];
  try {
    parse(text, errors, { disallowComments: true, allowTrailingComma: false, allowEmptyContent: false });
  } catch (error) {
    // brackets nested deeper than the stack
    if (!(error instanceof RangeError)) throw error;
  }
  const byLine = new Map<number, { column: number; wrong: string }>();
  const placeOf = placesIn(text);
  for (const { error, offset } of errors) {
    const { line, column } = placeOf(offset);
    const known = byLine.get(line);
    if (known && known.column <= column) continue;
    byLine.set(line, { column, wrong: SENTENCES[printParseErrorCode(error)] ?? 'the text is no JSON' });
  }
  if (byLine.size === 0) return new InputError('not-json', where, 'the text is no JSON', right);
  const lines = [...byLine].sort(([a], [b]) => a - b);
  return new InputErrors(
    firstOf(lines, where, ([line, { column, wrong }]) => {
      return new InputError('not-json', `${where} line ${line} column ${column}`, wrong, right);
    }),
  );
}

/**
 * The value of text that is JSON but for comments and commas behind the last item, with the place of each; null when
 * there is more wrong with it.
 */
export async function nearlyJson(
  text: string,
): Promise<{ value: unknown; mistakes: { place: string; wrong: string }[] } | null> {
  const { parse, printParseErrorCode } = await import('jsonc-parser');
  const errors: { error: number; offset: number; length: number }[] = [];
  const value: unknown = parse(text, errors, { allowTrailingComma: true });
  if (errors.length) return null;
  parse(text, errors, { disallowComments: true, allowTrailingComma: false });
  const mistakes = new Map<string, string>();
  const placeOf = placesIn(text);
  for (const { error, offset } of errors) {
    const isComment = printParseErrorCode(error) === 'InvalidCommentToken';
    const { line, column } = placeOf(offset);
    mistakes.set(
      `line ${line} column ${column}`,
      isComment ? SENTENCES.InvalidCommentToken : 'a comma stands before the end',
    );
  }
  return { value, mistakes: [...mistakes].map(([place, wrong]) => ({ place, wrong })) };
}

/** Tells line and column of places in a text, each from 1; n log n in the lines asked for. */
function placesIn(text: string): (offset: number) => { line: number; column: number } {
  const starts = [0, ...[...text.matchAll(/\r\n|\r|\n/g)].map(({ index, 0: end }) => index + end.length)];
  return (offset) => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle] <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - starts[low] + 1 };
  };
}

/** The line, from 1, on which a value begins in JSON text; the nearest one around it when it is not there. */
export async function lineInJson(text: string, path: readonly (string | number)[]): Promise<number> {
  const { findNodeAtLocation, parseTree } = await import('jsonc-parser');
  const root = parseTree(text);
  for (let depth = path.length; root && depth > 0; depth--) {
    const node = findNodeAtLocation(root, path.slice(0, depth));
    if (node) return text.slice(0, node.offset).split(/\r\n|\r|\n/).length;
  }
  return 1;
}
