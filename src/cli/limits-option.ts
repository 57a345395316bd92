import type { Command } from 'commander';
import { CLOTHS, type Cloth } from '../check/density/limits.js';
import { limitsAsked } from '../density-limits.js';
import { DENSITY_RANGES, type DensityAsked } from '../formats/density-asked.js';
import { plainNumber } from '../formats/plain-number.js';
import { InputError } from '../input-error.js';
import { choiceOption } from './choices.js';
import type { PictureOptions } from './picture-options.js';

/** Limits as they are given: what is too much may be left unsaid. */
export interface OwnLimits {
  readonly holes?: readonly number[];
  readonly layers?: readonly number[];
  readonly inOneHole?: readonly number[];
  readonly cover?: number;
}

/** From where on density is told; said on the command line, it goes before what a dressing says. */
export interface LimitOptions {
  readonly cloth?: Cloth;
  readonly limits?: OwnLimits;
}

export function declareLimits(command: Command): Command {
  return command
    .option(
      '--cloth <kind>',
      'how dense is too dense: on firm (cotton for quilts, velvet) or fine (fine cotton, silk, satin) (default: as the dressing says, else firm)',
      choiceOption('--cloth', CLOTHS),
    )
    .option(
      '--limits <measures...>',
      'limits of your own: holes=4,8 (worth a look, too much) and layers=3,6 on a mm2, in-one-hole=5,10, cover=40 (percent)',
      limitsOption('--limits'),
    );
}

/**
 * What a dressing says of density, with what the options say in its place. Where only one number is given, what was too much
 * still is, or that number where it is higher.
 */
export function densityByOptions(
  said: DensityAsked | undefined,
  { cloth, limits = {} }: LimitOptions,
): DensityAsked | undefined {
  if (!cloth && Object.keys(limits).length === 0) return said;
  const clothed: DensityAsked = { ...said, ...(cloth && { cloth }) };
  const before = limitsAsked(clothed);
  const asked = PAIRS.flatMap((key) => {
    const [warning, error = Math.max(warning, before[key].error)] = limits[key] ?? [];
    return warning === undefined ? [] : [[key, [warning, error]] as const];
  });
  const { cover } = limits;
  return { ...clothed, ...Object.fromEntries(asked), ...(cover !== undefined && { cover }) };
}

/** @throws InputError when limits are told that nothing is to show or keep */
export function checkLimits(
  { cloth, limits, show }: LimitOptions & Pick<PictureOptions, 'show'>,
  endings: readonly string[],
): void {
  if (!cloth && !limits) return;
  if (endings.includes('.dressing.json') || (show && MARKED.some((what) => show.has(what)))) return;
  throw new InputError(
    'no-density',
    limits ? '--limits' : '--cloth',
    'says from where on density is told; no picture shows it, and no dressing keeps it',
    `add --show ${MARKED.join(',')} with a picture, or --save, or measure the work with check`,
  );
}

/** What pictures mark where it goes beyond a limit. */
const MARKED = ['density', 'layers', 'holes'] as const;

/** Measures by the names that the option has for them; all but cover have two limits. */
const MEASURES = { holes: 'holes', layers: 'layers', 'in-one-hole': 'inOneHole', cover: 'cover' } as const;
const PAIRS = ['holes', 'layers', 'inOneHole'] as const;
type Name = keyof typeof MEASURES;

/** Parser of limits such as 'holes=4,8' (worth a look, too much), 'layers=3', 'in-one-hole=5' or 'cover=40'; gathers one after the other. */
export function limitsOption(option: string): (word: string, before?: OwnLimits) => OwnLimits {
  return (word, before = {}) => {
    const [name, told] = /^\s*([a-z-]+)\s*=\s*(.*\S)\s*$/.exec(word)?.slice(1) ?? [];
    if (name === undefined || !isMeasure(name)) {
      throw new InputError(
        'bad-limit',
        option,
        `'${word}' names no limit`,
        'give holes=4,8 layers=3,6 in-one-hole=5,10 or cover=40: from where it is worth a look, and from where too much',
      );
    }
    const numbers = told.split(',').map((one) => numberOf(option, name, one));
    const [warning, error] = numbers;
    if (numbers.length > (name === 'cover' ? 1 : 2) || (error !== undefined && error < warning)) {
      throw new InputError(
        'bad-limit',
        `${option} ${word.trim()}`,
        name === 'cover' ? 'cover has one limit' : 'these are not two limits, the lower one first',
        `give ${name}=${name === 'cover' ? 40 : '4,8'}`,
      );
    }
    return { ...before, [MEASURES[name]]: name === 'cover' ? warning / 100 : numbers };
  };
}

const isMeasure = (name: string): name is Name => Object.hasOwn(MEASURES, name);

function numberOf(option: string, name: Name, word: string): number {
  const { min, max } = rangeOf(name);
  const value = plainNumber(word);
  if (value >= min && value <= max) return value;
  const wrong = Number.isNaN(value) ? `'${word}' is not a plain number` : `${word} is out of range`;
  throw new InputError(
    'bad-number',
    `${option} ${name}`,
    wrong,
    `give a number from ${min} to ${max}, such as ${name === 'cover' ? 40 : 4}`,
  );
}

/** What a number may lie between as it is typed: cover in percent. */
function rangeOf(name: Name): { min: number; max: number } {
  const { min, max } = DENSITY_RANGES[MEASURES[name]];
  return name === 'cover' ? { min: 100 * min, max: 100 * max } : { min, max };
}
