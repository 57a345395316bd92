import { contrast } from '../color/contrast.js';
import type { Thread } from '../design/design.js';
import { threadKey } from '../design/merge.js';
import type { Pen } from '../draw/pen.js';
import { lettered } from './lettered.js';
import type { Box, Page } from './page.js';

/** How a thread is told from others without its color: a letter, and lines over its swatch. */
export interface ThreadMark {
  readonly letter: string;
  readonly pattern: number;
}

/** A mark for each thread, in the order of their use. */
export function threadMarks(threads: readonly (Thread | null)[]): ReadonlyMap<string, ThreadMark> {
  const marks = new Map<string, ThreadMark>();
  for (const thread of threads) {
    if (!thread || marks.has(threadKey(thread))) continue;
    marks.set(threadKey(thread), { letter: lettered(marks.size), pattern: marks.size % PATTERNS.length });
  }
  return marks;
}

/** Between two lines of a pattern, mm. */
const STEP = 1.3;
type Pattern = (pen: Pen, box: Box) => void;

/** Lines under an angle given by how far they go across while they go down. */
const slanted =
  (across: number): Pattern =>
  (pen, { x, y, width, height }) => {
    const lean = across * height;
    for (let at = Math.min(0, -lean) + STEP / 2; at < width + Math.max(0, -lean); at += STEP) {
      pen.move(x + at, y);
      pen.line(x + at + lean, y + height);
    }
  };
const level: Pattern = (pen, { x, y, width, height }) => {
  for (let at = STEP / 2; at < height; at += STEP) {
    pen.move(x, y + at);
    pen.line(x + width, y + at);
  }
};
const both =
  (a: Pattern, b: Pattern): Pattern =>
  (pen, box) => {
    a(pen, box);
    b(pen, box);
  };
/** Small crosses in rows. */
const crosses: Pattern = (pen, { x, y, width, height }) => {
  for (let row = STEP / 2; row < height; row += STEP) {
    for (let at = STEP / 2; at < width; at += STEP) {
      for (const [dx, dy] of [
        [0.35, 0],
        [0, 0.35],
      ]) {
        pen.move(x + at - dx, y + row - dy);
        pen.line(x + at + dx, y + row + dy);
      }
    }
  }
};

const PATTERNS: readonly Pattern[] = [
  () => {},
  slanted(-1),
  level,
  slanted(0),
  slanted(1),
  both(level, slanted(0)),
  crosses,
  both(slanted(-1), slanted(1)),
];

/** A swatch of thread: its colors side by side, and the lines of its pattern in black or white, whichever shows. */
export function drawSwatch(page: Page, room: Box, colors: readonly string[], pattern: number): void {
  const part = room.width / colors.length;
  colors.forEach((color, i) => {
    const box = { ...room, x: room.x + i * part, width: part };
    page.clipped(box, () => {
      page.box(box, { fill: color });
      const ink = contrast(color, '#000000') >= contrast(color, '#ffffff') ? '#000000' : '#ffffff';
      page.stroke({ color: ink, width: 0.22 }, (pen) => PATTERNS[pattern](pen, room));
    });
  });
  page.box(room, { line: { color: '#000000', width: 0.15 } });
}
