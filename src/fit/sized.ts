import { InputError } from '../input-error.js';
import { nearestName } from '../stitches/nearest-name.js';
import type { Stitch, Unit, Values } from '../stitches/stitch.js';
import type { Reach } from './band.js';

/** A stitch at the sizes asked for, ready to be built at any repeat length and scale. */
export interface Sized {
  readonly stitch: Stitch;
  /** wanted repeat at scale 1, mm */
  readonly repeat: number;
  /** smallest scale at which it is still a good size; 1 when it was asked for at its least or below */
  readonly least: number;
  /** units alternate hands */
  readonly glide: boolean;
  /** one unit with a repeat of the given length, other measures scaled */
  build(scale: number, repeat: number): Unit;
}

/** @throws InputError when a size asked for is unknown to the stitch or out of its range */
export function sized(stitch: Stitch, asked: Values): Sized {
  const names = stitch.parameters.map(({ name }) => name);
  for (const name of Object.keys(asked)) {
    if (names.includes(name)) continue;
    throw new InputError(
      'unknown-parameter',
      stitch.name,
      `it has no parameter "${name}"`,
      `did you mean "${nearestName(name, names)}"? It has ${names.join(', ')}`,
    );
  }
  for (const { name, unit, min, max } of stitch.parameters) {
    const value = asked[name];
    if (value === undefined || (value >= min && value <= max)) continue;
    const of = unit === 'mm' ? ' mm' : unit === 'degree' ? ' degrees' : '';
    throw new InputError(
      'size-out-of-range',
      `${stitch.name} ${name}`,
      `${value}${of} is out of range`,
      `${stitch.title.toLowerCase()} takes ${min} to ${max}${of}`,
    );
  }
  const parameter = (name: string) => stitch.parameters.find((candidate) => candidate.name === name);
  const wanted = (name: string) => asked[name] ?? parameter(name)!.default;
  const repeat = wanted('repeat');
  const width = wanted('width');
  const { smallest } = stitch;
  // The same few sizes are asked for again and again while a block is fitted.
  const built = new Map<string, Unit>();
  return {
    stitch,
    repeat,
    least: Math.min(1, Math.max(smallest.repeat / repeat, smallest.width / width)),
    glide: stitch.symmetry === 'glide',
    build(scale, length) {
      const key = `${scale}/${length}`;
      const known = built.get(key);
      if (known) return known;
      const values: Record<string, number> = {};
      for (const { name, unit, min, default: usual } of stitch.parameters) {
        const value = asked[name] ?? usual;
        // Lengths shrink with the stitch as far as the file lets them; shares, counts and angles stay.
        values[name] = unit === 'mm' ? Math.max(Math.min(value, min), value * scale) : value;
      }
      values.repeat = length;
      const unit = stitch.build(values);
      built.set(key, unit);
      return unit;
    },
  };
}

/** Reach to both hands of a line of these units; `hand` -1 exchanges left and right. */
export function reachOf(unit: Unit, glide: boolean, hand: 1 | -1): Reach {
  const { left, right } = unit.reach;
  if (glide) return { left: Math.max(left, right), right: Math.max(left, right) };
  return hand === 1 ? { left, right } : { left: right, right: left };
}
