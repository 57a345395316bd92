import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawWords, wordsLength } from '../../src/draw/lettering.js';

function linesOf(text: string, height = 6): (readonly [number, number])[][] {
  const lines: (readonly [number, number])[][] = [];
  drawWords(
    {
      move: (x, y) => lines.push([[x, y]]),
      line: (x, y) => lines[lines.length - 1].push([x, y]),
      close: () => {},
    },
    text,
    0,
    0,
    height,
  );
  return lines;
}
const pointsOf = (text: string, height?: number) => linesOf(text, height).flat();

const ENGLISH = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.,:;-+=><()/%&\'"!?#_';
const words = fc.string({ unit: fc.constantFrom(...ENGLISH), minLength: 1, maxLength: 30 });

describe('letters drawn as lines', () => {
  test('differ from each other, every one that English is written with', () => {
    const drawn = new Map<string, string>();
    const alike = [...ENGLISH].flatMap((letter) => {
      const key = JSON.stringify(linesOf(letter));
      const twin = drawn.get(key);
      drawn.set(key, letter);
      return twin ? [[twin, letter]] : [];
    });
    expect(alike).toEqual([]);
  });

  test('take as much room as they are said to, and grow with their height', () => {
    fc.assert(
      fc.property(words, fc.double({ min: 0.5, max: 20, noNaN: true }), (text, height) => {
        const right = pointsOf(text, height).reduce((most, [x]) => Math.max(most, x), 0);
        const long = wordsLength(text, height);
        // the last letter may be narrower than its room
        expect(right).toBeLessThanOrEqual(long + 1e-9);
        expect(right).toBeGreaterThan(long - height);
        expect(wordsLength(text, 2 * height)).toBeCloseTo(2 * long, 6);
      }),
    );
  });

  test('stand on their line, with tails below it', () => {
    const reach = (text: string) => pointsOf(text).map(([, y]) => y);
    expect(Math.max(...reach('Hamburg'.replace('g', '')))).toBe(0);
    expect(Math.min(...reach('HATCH'))).toBe(-6);
    expect(Math.max(...reach('gpqy'))).toBe(2);
  });

  test('leave accents out, and show what they have no lines for as a box', () => {
    expect(linesOf('Crème brûlée')).toEqual(linesOf('Creme brulee'));
    expect(linesOf('花')).toEqual(linesOf('糸'));
    expect(linesOf('花')[0]).toHaveLength(5);
  });
});
