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
 * Where JSON text that does not parse goes wrong, as " line 3 column 7" (empty when that cannot be told), and what is
 * wrong there. JSON.parse itself names the place in some cases only, and in words that differ between engines.
 */
export async function placeOfJsonError(text: string): Promise<{ place: string; wrong: string }> {
  const { parse, printParseErrorCode } = await import('jsonc-parser');
  const errors: { error: number; offset: number; length: number }[] = [];
  try {
    parse(text, errors, { disallowComments: true, allowTrailingComma: false, allowEmptyContent: false });
  } catch (error) {
    // brackets nested deeper than the stack
    if (!(error instanceof RangeError)) throw error;
  }
  if (!errors.length) return { place: '', wrong: 'the text is no JSON' };
  const [{ error, offset }] = errors;
  return {
    place: ` ${placeAt(text, offset)}`,
    wrong: SENTENCES[printParseErrorCode(error)] ?? 'the text is no JSON',
  };
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
  for (const { error, offset } of errors) {
    const isComment = printParseErrorCode(error) === 'InvalidCommentToken';
    mistakes.set(
      placeAt(text, offset),
      isComment ? SENTENCES.InvalidCommentToken : 'a comma stands before the end',
    );
  }
  return { value, mistakes: [...mistakes].map(([place, wrong]) => ({ place, wrong })) };
}

/** "line 3 column 7" */
function placeAt(text: string, offset: number): string {
  const lines = text.slice(0, offset).split(/\r\n|\r|\n/);
  return `line ${lines.length} column ${lines[lines.length - 1].length + 1}`;
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
