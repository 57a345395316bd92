import { drawWords, wordsLength } from '../lettering.js';
import { lines } from '../map-picture.js';
import { element, title } from '../svg.js';
import { pathData } from '../svg-pen.js';

const INK = '#22313f';
/** Height of capitals, mm: 2 mm reads at arm's length on paper. */
const WORDS = 1.9;
const ROW = 4.4;
const SAMPLE = 7;
const GAP = 1.4;
const BETWEEN = 4;

/** One line of a legend: how a thing looks, and what it is. */
export interface LegendEntry {
  /** draws the look in a box 7 mm wide and 3 high around a place */
  readonly sample: (x: number, y: number) => string;
  readonly told: string;
}

export interface LegendPart {
  readonly heading: string;
  readonly entries: readonly LegendEntry[];
}

const entryLength = (told: string): number => SAMPLE + GAP + wordsLength(told, WORDS);

/** A legend under a picture: its parts one below the other, entries side by side as far as there is room. */
export function legend(
  name: string,
  parts: readonly LegendPart[],
  left: number,
  top: number,
  room: number,
): { picture: string; width: number; height: number } {
  const headings = [name, ...parts.map(({ heading }) => heading)].map((words) => wordsLength(words, WORDS));
  const entries = parts.flatMap((part) => part.entries.map(({ told }) => entryLength(told)));
  const width = Math.max(room, ...headings, ...entries);
  let y = top + ROW / 2;
  const samples: string[] = [];
  const thin: [string, number, number][] = [];
  const bold: [string, number, number][] = [[name, left, y]];
  for (const { heading, entries } of parts) {
    y += ROW * 1.2;
    bold.push([heading, left, y]);
    const long = Math.max(0, ...entries.map(({ told }) => entryLength(told)));
    const columns = Math.max(1, Math.floor((width + BETWEEN) / (long + BETWEEN)));
    const column = (width + BETWEEN) / columns;
    // down one column and then down the next, so that a scale keeps together
    const rows = Math.ceil(entries.length / columns);
    entries.forEach(({ sample, told }, i) => {
      const x = left + Math.floor(i / Math.max(1, rows)) * column;
      const at = y + ROW * (1 + (i % rows));
      samples.push(sample(x + SAMPLE / 2, at));
      thin.push([told, x + SAMPLE + GAP, at]);
    });
    y += ROW * rows;
  }
  const written = (all: readonly [string, number, number][], width: number) =>
    element('path', {
      ...lines(INK, width),
      d: pathData((pen) => {
        for (const [words, x, at] of all) drawWords(pen, words, x, at + WORDS / 2, WORDS);
      }),
    });
  return {
    picture: samples.join('') + written(thin, 0.24) + written(bold, 0.38),
    width,
    height: y + ROW / 2 - top,
  };
}

/** A bar to lay a ruler on: what is printed is measured against it. */
export function rulerPart(width: number, height: number): LegendPart {
  const long = width >= 60 ? 50 : width >= 25 ? 20 : 10;
  const d = (x: number, y: number) =>
    pathData((pen) => {
      const from = x - SAMPLE / 2;
      pen.move(from, y);
      pen.line(from + long, y);
      for (let at = 0; at <= long; at += 5) {
        const tick = at % 10 === 0 ? 1.1 : 0.6;
        pen.move(from + at, y - tick);
        pen.line(from + at, y + tick);
      }
    });
  const name = title(`ruler of ${long} mm`);
  return {
    heading: `True size: ${width} x ${height} mm of cloth are shown; this bar is ${long} mm`,
    entries: [{ sample: (x, y) => element('path', { ...lines(INK, 0.25), d: d(x, y) }, name), told: '' }],
  };
}
