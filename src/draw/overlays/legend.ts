import { INCH, type LengthUnit } from '../../geometry/units.js';
import { drawWords, wordsLength } from '../lettering.js';
import { lines } from '../map-picture.js';
import { element, type Frame, title } from '../svg.js';
import { pathData } from '../svg-pen.js';

const INK = '#22313f';
/** Height of capitals, mm: 2 mm reads at arm's length on paper. */
const WORDS = 1.9;
const ROW = 4.4;
const SAMPLE = 7;
/** What a look takes around its place, mm. */
export const SAMPLE_BOX: Frame = { left: -3.8, top: -1.9, right: 3.8, bottom: 1.9 };
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

/** Lengths of the bar and between its ticks, each second of them larger: of a unit, the unit in mm. */
const RULERS = {
  mm: { unit: 1, lengths: [10, 20, 50], ticks: 5 },
  inch: { unit: INCH, lengths: [0.5, 1, 2], ticks: 0.125 },
} as const;

/** A bar to lay a ruler on: what is printed is measured against it. Width and height of the cloth in mm. */
export function rulerPart(width: number, height: number, as: LengthUnit): LegendPart {
  const { unit, lengths, ticks } = RULERS[as];
  const words = width >= 60 ? lengths[2] : width >= 25 ? lengths[1] : lengths[0];
  const long = words * unit;
  const told = (mm: number) => (as === 'mm' ? Math.round(10 * mm) / 10 : Math.round((100 * mm) / INCH) / 100);
  const d = (x: number, y: number) =>
    pathData((pen) => {
      const from = x - SAMPLE / 2;
      pen.move(from, y);
      pen.line(from + long, y);
      for (let i = 0; i * ticks <= words; i++) {
        const tick = i % 2 === 0 ? 1.1 : 0.6;
        pen.move(from + i * ticks * unit, y - tick);
        pen.line(from + i * ticks * unit, y + tick);
      }
    });
  const name = title(`ruler of ${words} ${as}`);
  return {
    heading: `True size: ${told(width)} x ${told(height)} ${as} of cloth are shown; this bar is ${words} ${as}`,
    entries: [{ sample: (x, y) => element('path', { ...lines(INK, 0.25), d: d(x, y) }, name), told: '' }],
  };
}
