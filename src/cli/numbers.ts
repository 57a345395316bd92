import { plainNumber } from '../formats/plain-number.js';
import { InputError } from '../input-error.js';

/** Parser of an option that is a length in mm within a range. */
export const lengthOption = (option: string, min: number, max: number): ((word: string) => number) =>
  withinRange(
    option,
    min,
    max,
    `millimeters from ${min} to ${max} without a unit, such as ${example(min, max)}`,
  );

/** Parser of an option that is a number without a unit, within a range. */
export const numberOption = (
  option: string,
  min: number,
  max: number,
  like: string,
): ((word: string) => number) =>
  withinRange(option, min, max, `a number from ${min} to ${max}, such as ${like}`);

/** The user's own word stands in the complaint. */
const withinRange =
  (option: string, min: number, max: number, right: string) =>
  (word: string): number => {
    const value = plainNumber(word);
    if (value >= min && value <= max) return value;
    const wrong = Number.isNaN(value) ? `'${word}' is not a plain number` : `${word} is out of range`;
    throw new InputError('bad-number', option, wrong, `give ${right}`);
  };

/** Parser of an option that is one whole number within a range. */
export function countOption(option: string, min: number, max: number): (word: string) => number {
  return (word) => {
    const value = /^\d{1,9}$/.test(word.trim()) ? Number(word) : Number.NaN;
    if (value >= min && value <= max) return value;
    const wrong = Number.isNaN(value) ? `'${word}' is not a whole number` : `${word} is out of range`;
    throw new InputError('bad-number', option, wrong, `give a whole number from ${min} to ${max}`);
  };
}

/** Highest number a seam or a color stop can be asked for by: a stitch file's header counts changes in three digits. */
const HIGHEST = 9999;

/** Parser of a list of numbers from 1, such as '1,4-6'; gives them ascending, each once. */
export function listOption(option: string): (word: string) => number[] {
  const wrongWay = (wrong: string) =>
    new InputError('bad-list', option, wrong, 'give numbers from 1 and ranges of them, such as 1,4-6');
  return (word) => {
    const numbers = new Set<number>();
    for (const part of word.split(',')) {
      const found = /^\s*(\d{1,9})\s*(?:-\s*(\d{1,9})\s*)?$/.exec(part);
      if (!found) throw wrongWay(`'${word}' is not a list of numbers`);
      const first = Number(found[1]);
      const last = Number(found[2] ?? found[1]);
      if (first < 1 || last < first) throw wrongWay(`'${part.trim()}' does not count up from 1`);
      if (last > HIGHEST) throw wrongWay(`${last} is higher than any number there is`);
      for (let n = first; n <= last; n++) numbers.add(n);
    }
    return [...numbers].sort((a, b) => a - b);
  };
}

function example(min: number, max: number): string {
  const middle = Math.sqrt(Math.max(min, 0.1) * max);
  return middle >= 10 ? String(Math.round(middle)) : middle.toFixed(1);
}
