import { type Pen, traceLine } from '../../draw/pen.js';
import { element, escapeText, type Frame, svgDocument, title } from '../../draw/svg.js';
import { pathData } from '../../draw/svg-pen.js';
import { INCH } from '../../geometry/units.js';
import { PRINT_AS_IT_IS } from '../check-bars.js';
import { KEY, KINDS, LOOKS } from './looks.js';
import { DOT_RADIUS, type Label, type LineKind, type Pattern } from './pattern.js';

/** Room for the title above the drawing, and for check bars and key below it, mm. */
const ABOVE = 10;
const BARS = 12;
const KEY_LINE = 4.5;
/** No narrower than the check bars and the lines of the key, mm. */
const NARROWEST = 150;
const SMALL = 2.6;

/** The whole pattern on one sheet at actual size, however large: title, drawing, check bars, key. */
export function patternSvg(pattern: Pattern): string {
  const kinds = KINDS.filter((kind) => pattern.lines.some((line) => line.kind === kind));
  const frame = sheetFrame(pattern, kinds.length);
  const below = pattern.frame.bottom;
  const left = frame.left + 3;
  return svgDocument(
    frame,
    pattern.name,
    element('rect', {
      x: frame.left,
      y: frame.top,
      width: frame.right - frame.left,
      height: frame.bottom - frame.top,
      fill: '#fff',
    }),
    text(`${pattern.name}${pattern.mirrored ? ', mirrored' : ''}`, left, frame.top + 6.5, 4.2),
    ...kinds.map((kind) =>
      strokes(kind, (pen) => {
        for (const line of pattern.lines) if (line.kind === kind) traceLine(pen, line.points);
      }),
    ),
    dots(pattern),
    element('g', {}, title('names'), ...pattern.labels.map(labelText)),
    checkBars(left, below + 1),
    element(
      'g',
      {},
      title('key'),
      ...kinds.map((kind, i) => keyLine(kind, left, below + BARS + KEY_LINE * (i + 0.5))),
    ),
    keyDot(left, below + BARS + KEY_LINE * (kinds.length + 0.5)),
  );
}

function sheetFrame({ frame }: Pattern, kinds: number): Frame {
  const widen = Math.max(0, NARROWEST - (frame.right - frame.left)) / 2;
  return {
    left: frame.left - widen,
    right: frame.right + widen,
    top: frame.top - ABOVE,
    bottom: frame.bottom + BARS + KEY_LINE * (kinds + 1) + 2,
  };
}

function strokes(kind: LineKind, draw: (pen: Pen) => void): string {
  const { width, dash } = LOOKS[kind];
  return element(
    'path',
    {
      class: kind,
      fill: 'none',
      stroke: '#000',
      'stroke-width': width,
      'stroke-dasharray': dash?.join(' '),
      'stroke-linejoin': 'round',
      'stroke-linecap': dash ? undefined : 'round',
      d: pathData(draw),
    },
    title(KEY[kind]),
  );
}

function dots({ dots: xy }: Pattern): string {
  const circles: string[] = [];
  for (let i = 0; i < xy.length; i += 2) {
    circles.push(element('circle', { cx: xy[i], cy: xy[i + 1], r: DOT_RADIUS }));
  }
  return element('g', { class: 'point', fill: '#000' }, title('needle points'), ...circles);
}

const text = (told: string, x: number, y: number, size: number, anchor?: 'middle'): string =>
  element(
    'text',
    {
      x,
      y,
      'font-family': 'Helvetica, Arial, sans-serif',
      'font-size': size,
      'text-anchor': anchor,
      fill: '#000',
    },
    escapeText(told),
  );

const labelText = ({ text: told, at: [x, y], size }: Label): string =>
  text(told, x, y + 0.36 * size, size, 'middle');

/** A bar of 100 mm and one of an inch, to hold a ruler to. */
function checkBars(x: number, y: number): string {
  const bar = (from: number, length: number) =>
    element('rect', { x: from, y, width: length, height: 1.6, fill: '#000' });
  return element(
    'g',
    { class: 'check-bars' },
    bar(x, 100),
    bar(x + 112, INCH),
    text('100 mm', x, y + 5, SMALL),
    text('1 inch', x + 112, y + 5, SMALL),
    text(PRINT_AS_IT_IS, x + 12, y + 5, SMALL),
  );
}

const keyLine = (kind: LineKind, x: number, y: number): string =>
  strokes(kind, (pen) => {
    pen.move(x, y);
    pen.line(x + 12, y);
  }) + text(KEY[kind], x + 15, y + 0.9, SMALL);

const keyDot = (x: number, y: number): string =>
  element('circle', { cx: x + 6, cy: y, r: DOT_RADIUS }) + text('needle point', x + 15, y + 0.9, SMALL);
