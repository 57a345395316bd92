import type { Command } from 'commander';
import { CLOTHS, type Cloth, type DensityLimits, LIMITS, type Limit } from '../check/density/limits.js';
import { plainNumber } from '../formats/plain-number.js';
import { InputError } from '../input-error.js';
import { choiceOption } from './choices.js';
import type { PictureOptions } from './picture-options.js';

/** Limits that the maker sets herself; all others are those of her cloth. */
export type OwnLimits = Partial<DensityLimits>;

/** From where on density is told, by the kind of cloth and by the maker's own limits. */
export interface LimitOptions {
  /** firm when not given */
  readonly cloth?: Cloth;
  readonly limits?: OwnLimits;
}

export function declareLimits(command: Command): Command {
  return command
    .option(
      '--cloth <kind>',
      'how dense is too dense: on firm (cotton for quilts, velvet) or fine (fine cotton, silk, satin) (default: firm)',
      choiceOption('--cloth', CLOTHS),
    )
    .option(
      '--limits <measures...>',
      'limits of your own: holes=4,8 (worth a look, too much) and layers=3,6 on a mm2, in-one-hole=5,10, cover=40 (percent)',
      limitsOption('--limits', LIMITS.firm),
    );
}

export const limitsOf = ({ cloth = 'firm', limits }: LimitOptions): DensityLimits => ({
  ...LIMITS[cloth],
  ...limits,
});

/** @throws InputError when limits are told and nothing that they mark is to be shown */
export function checkLimits({ cloth, limits, show }: LimitOptions & Pick<PictureOptions, 'show'>): void {
  if (!cloth && !limits) return;
  if (show && MARKED.some((what) => show.has(what))) return;
  throw new InputError(
    'no-density',
    limits ? '--limits' : '--cloth',
    'says from where on density is marked on a picture, and none shows it',
    `add --show ${MARKED.join(',')} with a picture, or measure the work with check`,
  );
}

/** What pictures mark where it goes beyond a limit. */
const MARKED = ['density', 'layers', 'holes'] as const;

/** What a limit may lie between: whole threads and holes, or percent. */
const RANGES = {
  holes: { min: 0.5, max: 100 },
  layers: { min: 0.5, max: 100 },
  'in-one-hole': { min: 1, max: 100 },
  cover: { min: 1, max: 100 },
} as const;
type Name = keyof typeof RANGES;

/**
 * Parser of limits such as 'holes=4,8' (worth a look, too much), 'layers=3', 'in-one-hole=5' or 'cover=40'; gathers one after
 * the other. Where only one number is given, what was too much still is, or that number where it is higher.
 */
export function limitsOption(
  option: string,
  usual: DensityLimits,
): (word: string, before?: OwnLimits) => OwnLimits {
  return (word, before = {}) => {
    const [name, told] = /^\s*([a-z-]+)\s*=\s*(.*\S)\s*$/.exec(word)?.slice(1) ?? [];
    if (name === undefined || !Object.hasOwn(RANGES, name)) {
      throw new InputError(
        'bad-limit',
        option,
        `'${word}' names no limit`,
        'give holes=4,8 layers=3,6 in-one-hole=5,10 or cover=40: from where it is worth a look, and from where too much',
      );
    }
    const numbers = told.split(',').map((one) => numberOf(option, name as Name, one));
    const [warning, error] = numbers;
    if (numbers.length > (name === 'cover' ? 1 : 2) || (error !== undefined && error < warning)) {
      throw new InputError(
        'bad-limit',
        `${option} ${word.trim()}`,
        name === 'cover' ? 'cover has one limit' : 'these are not two limits, the lower one first',
        `give ${name}=${name === 'cover' ? 40 : '4,8'}`,
      );
    }
    if (name === 'cover') return { ...before, cover: warning / 100 };
    const key = name === 'in-one-hole' ? 'inOneHole' : (name as 'holes' | 'layers');
    const limit: Limit = { warning, error: error ?? Math.max(warning, usual[key].error) };
    return { ...before, [key]: limit };
  };
}

function numberOf(option: string, name: Name, word: string): number {
  const { min, max } = RANGES[name];
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
