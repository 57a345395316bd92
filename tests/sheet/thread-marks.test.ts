import { describe, expect, test } from 'vitest';
import { PAPERS } from '../../src/sheet/page-sizes.js';
import { newPaper } from '../../src/sheet/paper.js';
import { drawSwatch, threadMarks } from '../../src/sheet/thread-marks.js';
import { type GrayPage, grayPage, hasPoppler } from './poppler.js';

const thread = (name: string, weight = 'No. 40') => ({ name, hex: '#d3a52c', weight });

describe('marks of threads', () => {
  test('are letters in the order of use; the same thread keeps its own, another weight is another thread', () => {
    const threads = [thread('Gold'), null, thread('Rust'), thread('Gold'), thread('Gold', 'No. 30')];
    expect([...threadMarks(threads).values()].map(({ letter }) => letter)).toEqual(['A', 'B', 'C']);
  });

  test('stay apart for any number of threads', () => {
    const letters = [...threadMarks(Array.from({ length: 60 }, (_, i) => thread(`${i}`))).values()];
    expect(new Set(letters.map(({ letter }) => letter)).size).toBe(60);
    expect(letters[26].letter).toBe('AA');
  });

  test.skipIf(!hasPoppler).each(['#d3a52c', '#101010', '#fbf7ee'])(
    'eight swatches of thread %s are told apart without color',
    async (hex) => {
      const paper = await newPaper({ title: '' });
      const page = paper.addPage(PAPERS.a4);
      const boxes = Array.from({ length: 8 }, (_, i) => ({ x: 20, y: 20 + 8 * i, width: 11, height: 4 }));
      boxes.forEach((box, pattern) => {
        drawSwatch(page, box, [hex], pattern);
      });
      const gray = grayPage(await paper.bytes(), 1, 300);
      const seen = boxes.map((box) => valuesIn(gray, box));
      const alike = seen
        .flatMap((a, i) => seen.slice(0, i).map((b) => difference(a, b)))
        .filter((d) => d < 0.1);
      expect(alike).toEqual([]);
    },
  );
});

function valuesIn(
  { width, values }: GrayPage,
  box: { x: number; y: number; width: number; height: number },
): number[] {
  const dots = (mm: number) => Math.round((mm / 25.4) * 300);
  const found: number[] = [];
  // half a millimeter inside the border
  for (let y = dots(box.y + 0.5); y < dots(box.y + box.height - 0.5); y++)
    for (let x = dots(box.x + 0.5); x < dots(box.x + box.width - 0.5); x++) found.push(values[y * width + x]);
  return found;
}

/** Share of dots that differ by a quarter of the way from black to white or more. */
const difference = (a: readonly number[], b: readonly number[]): number =>
  a.filter((value, i) => Math.abs(value - b[i]) > 64).length / a.length;
