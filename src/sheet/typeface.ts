import type { PDFFont } from '@cantoo/pdf-lib';
import { spelled } from './letters.js';

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
 * spelled in those that they have.
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
      for (const letter of spelled(text, known)) sum += widthOf(letter, style);
      return sum * style.size;
    },
    shown: (text, style) => ({
      font: style.bold ? 'F2' : 'F1',
      codes: fontOf(style).encodeText(spelled(text, known)).toString(),
    }),
  };
}
