import { FIGURES } from '../geometry/figures.js';
import type { Pen } from './pen.js';

/**
 * Letters as single lines, so that words in pictures look the same everywhere and need no font. Capitals are 6 high from the
 * top, small letters begin at 2, tails reach to 8; the first figure is the width.
 */
const LETTERS: Readonly<Record<string, string>> = {
  a: '3 35 26 16 05 03 12 22 33|32 36',
  b: '3 00 06|03 12 22 33 35 26 16 05',
  c: '3 33 22 12 03 05 16 26 35',
  d: '3 30 36|33 22 12 03 05 16 26 35',
  e: '3 04 34 33 22 12 03 05 16 26 35',
  f: '2 20 11 16|02 22',
  g: '3 32 37 28 18 07|33 22 12 03 05 16 26 35',
  h: '3 00 06|03 12 22 33 36',
  i: '0 02 06|00 00',
  j: '1 12 17 08|10 10',
  k: '3 00 06|32 04 36',
  l: '1 00 05 16',
  m: '4 02 06|03 12 23 26|23 32 43 46',
  n: '3 02 06|03 12 22 33 36',
  o: '3 12 03 05 16 26 35 33 22 12',
  p: '3 02 08|03 12 22 33 35 26 16 05',
  q: '3 32 38|33 22 12 03 05 16 26 35',
  r: '2 02 06|03 12 22',
  s: '3 32 12 03 14 24 35 26 06',
  t: '2 10 15 26|02 22',
  u: '3 02 05 16 26 35|32 36',
  v: '2 02 16 22',
  w: '4 02 16 23 36 42',
  x: '3 02 36|32 06',
  y: '3 02 05 16 26 35|32 37 28 18 07',
  z: '3 02 32 06 36',
  A: '4 06 20 46|14 34',
  B: '4 00 06 36 45 44 33 03|33 42 41 30 00',
  C: '4 41 30 10 01 05 16 36 45',
  D: '4 00 06 26 44 42 20 00',
  E: '3 30 00 06 36|03 23',
  F: '3 30 00 06|03 23',
  G: '4 41 30 10 01 05 16 36 45 43 23',
  H: '4 00 06|40 46|03 43',
  I: '0 00 06',
  J: '3 30 35 26 16 05',
  K: '4 00 06|40 03 46',
  L: '3 00 06 36',
  M: '4 06 00 23 40 46',
  N: '4 06 00 46 40',
  O: '5 20 30 51 55 36 26 05 01 20',
  P: '4 06 00 30 41 42 33 03',
  Q: '5 20 30 51 55 36 26 05 01 20|34 56',
  R: '4 06 00 30 41 42 33 03|23 46',
  S: '4 41 30 10 01 02 13 33 44 45 36 16 05',
  T: '4 00 40|20 26',
  U: '4 00 05 16 36 45 40',
  V: '4 00 26 40',
  W: '4 00 16 23 36 40',
  X: '4 00 46|40 06',
  Y: '4 00 23 40|23 26',
  Z: '4 00 40 06 46',
  ' ': '1',
  '.': '1 06 06',
  ',': '1 16 07',
  ':': '0 03 03|06 06',
  ';': '1 13 13|16 07',
  '-': '2 04 24',
  '+': '2 04 24|13 15',
  '=': '3 03 33|05 35',
  '>': '3 02 34 06',
  '<': '3 32 04 36',
  '(': '1 10 01 05 16',
  ')': '1 00 11 15 06',
  '/': '3 30 06',
  '%': '4 10 01 12 21 10|34 25 36 45 34|40 06',
  '&': '4 46 12 11 20 31 14 05 16 26 44',
  "'": '0 00 01',
  '"': '1 00 01|10 11',
  '!': '0 00 04|06 06',
  '?': '3 01 10 20 31 22 14|16 16',
  '#': '4 10 16|30 36|02 42|04 44',
  _: '3 06 36',
};
/** What stands for a character that has no lines here. */
const UNKNOWN = '3 02 32 36 06 02';

const HIGH = 6;
const BETWEEN = 1.6;

/** Writes words whose line stands at y, the first letter at x, capitals `height` mm high; tells where they end. */
export function drawWords(pen: Pen, text: string, x: number, y: number, height: number): number {
  const scale = height / HIGH;
  let left = x;
  for (const letter of plain(text)) {
    const [width, lines] = glyph(letter);
    for (const line of lines) {
      line.forEach(([column, row], i) => {
        const [px, py] = [left + column * scale, y + (row - HIGH) * scale];
        if (i === 0) pen.move(px, py);
        else pen.line(px, py);
      });
    }
    left += (width + BETWEEN) * scale;
  }
  return left - BETWEEN * scale;
}

/** How long words are, mm. */
export function wordsLength(text: string, height: number): number {
  const units = plain(text).reduce((sum, letter) => sum + glyph(letter)[0] + BETWEEN, 0);
  return Math.max(0, ((units - BETWEEN) * height) / HIGH);
}

/** Letters without their accents, which keeps a name readable. */
const plain = (text: string): string[] => [...text.normalize('NFD').replace(/\p{M}/gu, '')];

function glyph(letter: string): [width: number, lines: (readonly [number, number])[][]] {
  const figure = /^\d$/.test(letter) ? `4 ${FIGURES[Number(letter)]}` : undefined;
  const drawn = figure ?? (Object.hasOwn(LETTERS, letter) ? LETTERS[letter] : UNKNOWN);
  const lines = drawn
    .slice(2)
    .split('|')
    .filter(Boolean)
    .map((line) => line.split(' ').map((spot) => [Number(spot[0]), Number(spot[1])] as const));
  return [Number(drawn[0]), lines];
}
