/** Width and height of something flat, mm. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Paper for home printers, upright, mm. A4: ISO 216. Letter: 8.5 by 11 inches (ANSI/ASME Y14.1, size A). */
export const PAPERS = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
} as const satisfies Record<string, Size>;

export type PaperName = keyof typeof PAPERS;

/** How each is told. */
export const PAPER_NAMES: Readonly<Record<PaperName, string>> = { a4: 'A4', letter: 'Letter' };

/** The same paper lying on its long side. */
export const lying = ({ width, height }: Size): Size => ({ width: height, height: width });

/** A point of PDF is 1/72 inch (ISO 32000-1, 8.3.2.3). */
export const POINTS_PER_MM = 72 / 25.4;
