import type { Pen } from '../draw/pen.js';
import type { Size } from './page-sizes.js';
import { hundredths, pdfPen } from './pdf-pen.js';
import type { TextStyle, Typeface } from './typeface.js';

/** How a line is drawn. */
export interface LineStyle {
  /** '#rrggbb' */
  readonly color: string;
  /** mm */
  readonly width: number;
  /** lengths of dash and gap in turn, mm */
  readonly dash?: readonly number[];
  /** ends of lines (default: butt); joins are round with round ends and mitered with others */
  readonly cap?: 'butt' | 'round';
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * One page, drawn on in millimeters: x right and y down from its upper left corner. Later things lie over earlier. Colors
 * are '#rrggbb'.
 */
export interface Page {
  readonly size: Size;
  /** Strokes what `draw` traces. */
  stroke(style: LineStyle, draw: (pen: Pen) => void): void;
  /** Fills what `draw` traces, by the even-odd rule: a ring inside another is a hole. */
  fill(color: string, draw: (pen: Pen) => void): void;
  line(x1: number, y1: number, x2: number, y2: number, style: LineStyle): void;
  box(box: Box, look: { readonly fill?: string; readonly line?: LineStyle }): void;
  disc(x: number, y: number, radius: number, color: string): void;
  /** Text in one line, its baseline at y. */
  text(text: string, x: number, y: number, style: TextStyle): void;
  /** Draws inside a box only. */
  clipped(box: Box, draw: () => void): void;
  /**
   * Draws in a frame of its own: its (0, 0) is at (x, y) of this page, a unit is `scale` mm, `turn` degrees clockwise;
   * `mirrored` turns left and right about.
   */
  placed(frame: Placing, draw: () => void): void;
}

export interface Placing {
  readonly x: number;
  readonly y: number;
  readonly scale?: number;
  readonly turn?: number;
  readonly mirrored?: boolean;
}

/** A page and the PDF operators of all that was drawn on it. */
export interface WrittenPage extends Page {
  content(): string;
}

/** A circle as four cubic curves errs by 0.03 % of its radius (A. Riskus, Information Technology and Control 35, 2006). */
const KAPPA = 0.5522847498;

export function blankPage(size: Size, typeface: Typeface): WrittenPage {
  const parts: string[] = [];
  const write = (...operators: readonly string[]) => void parts.push(...operators);
  const traced = (draw: (pen: Pen) => void) => {
    const pen = pdfPen();
    draw(pen);
    return pen.data();
  };
  const within = (draw: () => void, ...first: readonly string[]) => {
    write('q', ...first);
    draw();
    write('Q');
  };
  const page: Page = {
    size,
    stroke(style, draw) {
      write(lineState(style), traced(draw), 'S');
    },
    fill(color, draw) {
      write(`${rgb(color)} rg`, traced(draw), 'f*');
    },
    line(x1, y1, x2, y2, style) {
      page.stroke(style, (pen) => {
        pen.move(x1, y1);
        pen.line(x2, y2);
      });
    },
    box({ x, y, width, height }, { fill, line }) {
      const re = `${[x, y, width, height].map(hundredths).join(' ')} re`;
      if (fill) write(`${rgb(fill)} rg`, re, 'f');
      if (line) write(lineState(line), re, 'S');
    },
    disc(x, y, radius, color) {
      write(`${rgb(color)} rg`, circle(x, y, radius), 'f');
    },
    text(text, x, y, style) {
      if (text === '') return;
      const { font, codes } = typeface.shown(text, style);
      const back = { left: 0, center: 0.5, right: 1 }[style.align ?? 'left'];
      const left = back ? x - back * typeface.width(text, style) : x;
      // the frame has y down: letters are turned up again
      write(
        `BT /${font} ${hundredths(style.size)} Tf ${rgb(style.color ?? '#000000')} rg`,
        `1 0 0 -1 ${hundredths(left)} ${hundredths(y)} Tm ${codes} Tj ET`,
      );
    },
    clipped({ x, y, width, height }, draw) {
      within(draw, `${[x, y, width, height].map(hundredths).join(' ')} re W n`);
    },
    placed({ x, y, scale = 1, turn = 0, mirrored = false }, draw) {
      const [cos, sin] = rightAngled(turn);
      const across = mirrored ? -scale : scale;
      const matrix = [across * cos, across * sin, -scale * sin, scale * cos, x, y];
      within(draw, `${matrix.map(fine).join(' ')} cm`);
    },
  };
  return { ...page, content: () => parts.join('\n') };
}

/** Cosine and sine of an angle in degrees, exact at right angles. */
function rightAngled(degrees: number): [number, number] {
  const quarter = degrees / 90;
  if (Number.isInteger(quarter)) {
    return (
      [
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ] as const
    )[((quarter % 4) + 4) % 4].slice() as [number, number];
  }
  const radians = (degrees * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}

/** A factor as PDF writes it: what moves the far end of a page by less than a hundredth of a millimeter is cut. */
const fine = (value: number): string => String(Math.round(value * 1e6) / 1e6 || 0);

function lineState({ color, width, dash = [], cap = 'butt' }: LineStyle): string {
  const round = cap === 'round' ? 1 : 0;
  return `${rgb(color)} RG ${fine(width)} w ${round} J ${round} j [${dash.map(hundredths).join(' ')}] 0 d`;
}

/** A color as three shares of one. */
function rgb(hex: string): string {
  const all = Number.parseInt(hex.slice(1), 16);
  return [16, 8, 0].map((shift) => Math.round((((all >> shift) & 255) / 255) * 1e4) / 1e4).join(' ');
}

function circle(x: number, y: number, r: number): string {
  const k = KAPPA * r;
  const curve = (...numbers: readonly number[]) => `${numbers.map(hundredths).join(' ')} c`;
  return [
    `${hundredths(x + r)} ${hundredths(y)} m`,
    curve(x + r, y + k, x + k, y + r, x, y + r),
    curve(x - k, y + r, x - r, y + k, x - r, y),
    curve(x - r, y - k, x - k, y - r, x, y - r),
    curve(x + k, y - r, x + r, y - k, x + r, y),
  ].join(' ');
}
