import { distance } from 'fastest-levenshtein';
import type { FigureElement, SvgFigure } from '../formats/svg-figure.js';
import { InputError } from '../input-error.js';
import { isSeam } from './drawn-seam.js';

/** Passes of thread that a leg gets when its line does not say. Common practice. */
export const USUAL_PASSES = 3;
const MOST_PASSES = 12;
const PASSES = `"passes", a whole number from 0 to ${MOST_PASSES}`;

/** Words of a stitch's file that a drawing cannot say. */
const OF_THE_FILE: ReadonlySet<string> = new Set([
  'beneath',
  'closing',
  'detached',
  'keepsShapeAt',
  'onlyAtEnd',
  'share',
  'thread',
]);

/** How often a line is sewn; NaN when what it says is no such number. */
export function passesOf({ attributes }: FigureElement): number {
  if (attributes.passes === undefined) return USUAL_PASSES;
  const passes = /^\s*\d+\s*$/.test(attributes.passes) ? Number(attributes.passes) : Number.NaN;
  return passes <= MOST_PASSES ? passes : Number.NaN;
}

/** Words of ours in a drawing that are misspelled, stand in the wrong place or say what cannot be. */
export function wordMistakes({ lines, groups }: SvgFigure): InputError[] {
  const mistakes: InputError[] = [];
  // an element that is several lines says its words once
  const elements = [...new Map(lines.map((line) => [line.attributes, line])).values()];
  for (const element of [...elements, ...groups]) {
    const { attributes, where } = element;
    const add = (wrong: string, right: string) =>
      mistakes.push(new InputError('bad-attribute', where, wrong, right));
    for (const name of Object.keys(attributes)) {
      if (OF_THE_FILE.has(name)) {
        add(`"${name}" is not read in a drawing`, 'say it in the file that is made of the drawing');
      } else if (name !== 'passes' && isMisspelled(name)) add(`"${name}" is not known`, `say ${PASSES}`);
    }
    if (attributes.passes === undefined) continue;
    if (element.name === 'g') add('passes stands on a group', 'say it of every line in the group');
    else if (isSeam(element)) add('passes stands on the seam', 'the seam is not sewn: leave it away there');
    else if (Number.isNaN(passesOf(element))) {
      add(`passes is "${attributes.passes}"`, `a whole number from 0 to ${MOST_PASSES}`);
    }
  }
  return mistakes;
}

/** `Passes`, `pases`, `pass`, `data-passes`; no attribute of SVG is so near to it. */
const isMisspelled = (name: string): boolean =>
  distance(name.toLowerCase().replace(/^.*[:-]/, ''), 'passes') <= 2;
