import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { readSvgBlock } from '../../src/block/read-drawing.js';
import { threadKey } from '../../src/design/merge.js';
import { type Dressed, dress } from '../../src/dress.js';
import type { Point } from '../../src/geometry/point.js';
import { defaultDressing } from '../../src/plan.js';
import type { Box, Page } from '../../src/sheet/page.js';
import { drawNumbers } from '../../src/sheet/picture-numbers.js';
import { threadMarks } from '../../src/sheet/thread-marks.js';
import { builtIn } from '../stitches/dictionary.js';

const panel = readFileSync(new URL('../../gallery/demo/panel.svg', import.meta.url), 'utf8');
let dressed: Dressed;
beforeAll(async () => {
  const source = { file: 'panel.svg', stops: null, snap: 0.3, through: [] };
  const block = await readSvgBlock(panel, 'panel.svg', source);
  dressed = dress(block, defaultDressing(block.map, { source, dictionary: builtIn }), builtIn);
});

/** What is drawn of the numbers with the block at a scale: white boxes under them, figures, how many have no room. */
function drawn(scale: number) {
  const boxes: Box[] = [];
  const texts: { text: string; bold: boolean }[] = [];
  const page = {
    stroke: () => {},
    fill: () => {},
    line: () => {},
    clipped: (_: Box, draw: () => void) => draw(),
    box: (box: Box, { fill }: { fill?: string }) => void (fill === '#ffffff' && boxes.push(box)),
    text: (text: string, _x: number, _y: number, style: { bold?: boolean }) =>
      void texts.push({ text, bold: style.bold === true }),
  } as unknown as Page;
  const marks = threadMarks(dressed.design.stops.map(({ thread }) => thread));
  expect(dressed.design.stops.every(({ thread }) => marks.has(threadKey(thread)))).toBe(true);
  const onPage = ([x, y]: Point): Point => [x * scale, y * scale];
  const within = { left: 0, top: 0, right: 130 * scale, bottom: 180 * scale };
  const unnumbered = drawNumbers(page, dressed, marks, onPage, { seams: true, signs: [[0, 0]], within });
  const numbersOf = (bold: boolean) => texts.filter((one) => one.bold === bold).map(({ text }) => text);
  return { boxes, stops: numbersOf(true), seams: numbersOf(false), unnumbered };
}

const meet = (a: Box, b: Box) =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
const over = (boxes: readonly Box[]) =>
  boxes.filter((box, i) => boxes.slice(0, i).some((other) => meet(box, other)));
const upTo = (n: number) => Array.from({ length: n }, (_, i) => String(i + 1));

describe('numbers on the picture of the sheet', () => {
  test('are those of all stops and seams where there is room, none over another', () => {
    const { boxes, stops, seams, unnumbered } = drawn(1);
    expect(unnumbered).toBe(0);
    expect([...stops].sort((a, b) => +a - +b)).toEqual(upTo(dressed.design.stops.length));
    expect(seams).toEqual(upTo(dressed.block.map.seams.length));
    expect(boxes.length).toBe(stops.length + seams.length);
    expect(over(boxes)).toEqual([]);
  });

  test.each([0.3, 0.2, 0.12])(
    'of a block drawn at %f of its size stay apart, stops before seams',
    (scale) => {
      const { boxes, stops, seams, unnumbered } = drawn(scale);
      expect(stops.length + unnumbered).toBe(dressed.design.stops.length);
      if (unnumbered > 0) expect(seams).toEqual([]);
      expect(over(boxes)).toEqual([]);
    },
  );

  test('for which there is no room are counted, not drawn over others', () => {
    expect(drawn(0.06).unnumbered).toBeGreaterThan(0);
  });
});
