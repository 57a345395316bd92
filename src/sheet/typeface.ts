import type { PDFFont } from '@cantoo/pdf-lib';

/** How text looks. Sizes are those of the letters' body in mm: 3.2 mm is 9 points. */
export interface TextStyle {
  readonly size: number;
  readonly bold?: boolean;
  /** '#rrggbb' (default: black) */
  readonly color?: string;
  /** what of the text stands at its x (default: left) */
  readonly align?: 'left' | 'center' | 'right';
}

/** The faces of a document: measured here and written by the page, so that both agree. */
export interface Typeface {
  /** mm */
  width(text: string, style: TextStyle): number;
  /** Text as PDF shows it: the name of a font among the page's resources, and the hexadecimal string of its codes. */
  shown(text: string, style: TextStyle): { readonly font: 'F1' | 'F2'; readonly codes: string };
}

/**
 * The two standard faces of PDF, which every reader brings along (ISO 32000-1, 9.6.2.2). Letters that they have not are
 * shown without their accents, or by their numbers in Unicode: never left out.
 */
export function standardTypeface(regular: PDFFont, bold: PDFFont): Typeface {
  const known = new Set(regular.getCharacterSet());
  const widths = new Map<string, number>();
  const fontOf = (style: TextStyle) => (style.bold ? bold : regular);
  const widthOf = (letter: string, style: TextStyle): number => {
    const key = `${style.bold ? 'b' : 'r'}${letter}`;
    const had = widths.get(key);
    if (had !== undefined) return had;
    // Letter by letter: a string is shown without kerning, and would be measured with it.
    const width = fontOf(style).widthOfTextAtSize(letter, 1);
    widths.set(key, width);
    return width;
  };
  return {
    width: (text, style) => {
      let sum = 0;
      for (const letter of writable(text, known)) sum += widthOf(letter, style);
      return sum * style.size;
    },
    shown: (text, style) => ({
      font: style.bold ? 'F2' : 'F1',
      codes: fontOf(style).encodeText(writable(text, known)).toString(),
    }),
  };
}

/** Letters that are no letter with a mark: NFKD does not take them apart. */
const plain: Readonly<Record<string, string>> = { ł: 'l', Ł: 'L', đ: 'd', Đ: 'D', ı: 'i', ħ: 'h', Ħ: 'H' };

function writable(text: string, known: ReadonlySet<number>): string {
  let out = '';
  for (const letter of text.normalize('NFC')) {
    if (known.has(letter.codePointAt(0)!)) out += letter;
    else if (/\s/.test(letter)) out += ' ';
    else out += substitute(letter, known);
  }
  return out;
}

function substitute(letter: string, known: ReadonlySet<number>): string {
  const bare = plain[letter] ?? letter.normalize('NFKD').replace(/\p{M}/gu, '');
  if (bare !== '' && [...bare].every((one) => known.has(one.codePointAt(0)!))) return bare;
  return /\p{C}|\p{M}/u.test(letter)
    ? ''
    : `[U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}]`;
}
