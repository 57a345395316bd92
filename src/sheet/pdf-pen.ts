import type { Pen } from '../draw/pen.js';

/** A pen that writes the path operators of PDF (ISO 32000-1, 8.5.2), and what it has written. */
export interface PdfPen extends Pen {
  data(): string;
}

/** Path operators in hundredths of a millimeter: finer than paper shows. A step too short to see is left out. */
export function pdfPen(): PdfPen {
  const parts: string[] = [];
  let at = '';
  let pending = false;
  const place = (x: number, y: number) => `${hundredths(x)} ${hundredths(y)}`;
  return {
    move(x, y) {
      at = place(x, y);
      parts.push(at, 'm');
      pending = true;
    },
    line(x, y) {
      const to = place(x, y);
      if (to === at && !pending) return;
      at = to;
      parts.push(at, 'l');
      pending = false;
    },
    close() {
      parts.push('h');
    },
    data: () => parts.join(' '),
  };
}

/** A number as PDF writes it: no exponent, no minus zero. */
export const hundredths = (value: number): string => String(Math.round(value * 100) / 100 || 0);
