import { blankPage, type Page, type WrittenPage } from './page.js';
import { POINTS_PER_MM, type Size } from './page-sizes.js';
import { standardTypeface, type TextStyle } from './typeface.js';

/** A document of pages in millimeters. Holds no date and no chance: the same drawing gives the same bytes. */
export interface Paper {
  /** in the order they were added; numbers are put on them when all are there */
  readonly pages: readonly Page[];
  addPage(size: Size): Page;
  /** Width of text as it will be shown, mm. */
  width(text: string, style: TextStyle): number;
  /**
   * Text in lines no wider than `width` mm. Breaks at spaces, at line breaks in the text, and inside a word that is
   * too long for a line by itself. At least one line, which may be ''.
   */
  lines(text: string, width: number, style: TextStyle): string[];
  /** The whole document as PDF. */
  bytes(): Promise<Uint8Array>;
}

/**
 * An empty document.
 * @param about its title for a reader's window
 */
export async function newPaper(about: { readonly title: string }): Promise<Paper> {
  const { PDFDocument, PDFName, PrintScaling, StandardFonts } = await import('@cantoo/pdf-lib');
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(about.title, { showInWindowTitleBar: true });
  document.setLanguage('en-US');
  // readers propose to print at actual size
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const regular = await document.embedFont(StandardFonts.Helvetica);
  const bold = await document.embedFont(StandardFonts.HelveticaBold);
  const typeface = standardTypeface(regular, bold);
  const pages: WrittenPage[] = [];
  const width: Paper['width'] = (text, style) => typeface.width(text, style);
  return {
    pages,
    width,
    lines: (text, most, style) => brokenLines(text, most, (part) => width(part, style)),
    addPage(size) {
      const page = blankPage(size, typeface);
      pages.push(page);
      return page;
    },
    async bytes() {
      for (const page of pages) {
        const { size } = page;
        const sheet = document.addPage([size.width * POINTS_PER_MM, size.height * POINTS_PER_MM]);
        // from here on a unit is a millimeter, and y goes down from the upper edge
        const frame = [POINTS_PER_MM, 0, 0, -POINTS_PER_MM, 0, size.height * POINTS_PER_MM];
        const content = document.context.flateStream(`${frame.join(' ')} cm\n${page.content()}`);
        sheet.node.set(PDFName.of('Contents'), document.context.register(content));
        sheet.node.setFontDictionary(PDFName.of('F1'), regular.ref);
        sheet.node.setFontDictionary(PDFName.of('F2'), bold.ref);
      }
      return document.save({ addDefaultPage: false });
    },
  };
}

/** Text broken into lines that are no wider than `most`. */
export function brokenLines(text: string, most: number, width: (part: string) => number): string[] {
  return text.split(/\r\n|[\n\r]/).flatMap((paragraph) => {
    const lines: string[] = [];
    let line = '';
    for (const word of paragraph.split(/[^\S\u00a0]+/).filter(Boolean)) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (width(longer) <= most) {
        line = longer;
        continue;
      }
      if (line !== '') lines.push(line);
      const pieces = wordPieces(word, most, width);
      line = pieces.pop()!;
      lines.push(...pieces);
    }
    return [...lines, line];
  });
}

/** A word in pieces that fit a line each; a single letter that is too wide stands alone. */
function wordPieces(word: string, most: number, width: (part: string) => number): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && width(piece + letter) > most) {
      pieces.push(piece);
      piece = letter;
    } else piece += letter;
  }
  return [...pieces, piece];
}
