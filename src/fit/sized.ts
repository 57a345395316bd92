import { InputError } from '../input-error.js';
import { nearestName } from '../stitches/nearest-name.js';
import type { Figure, Stitch, Unit, Values } from '../stitches/stitch.js';
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

/**
 * A stitch at the sizes asked for.
 * @param larger by how much its thread makes the smallest good size larger than in No. 40
 * @throws InputError when a size asked for is unknown to the stitch or out of its range
 */
export function sized(stitch: Stitch, asked: Values, larger = 1): Sized {
  checkValues(stitch, asked);
  const wanted = (name: string) =>
    asked[name] ?? stitch.parameters.find((candidate) => candidate.name === name)!.default;
  const repeat = wanted('repeat');
  const width = wanted('width');
  const { smallest } = stitch;
  // The same few sizes are asked for again and again while a block is fitted.
  const built = new Map<number, Map<number, Unit>>();
  return {
    stitch,
    repeat,
    least: Math.min(1, larger * Math.max(smallest.repeat / repeat, smallest.width / width)),
    glide: stitch.symmetry === 'glide',
    build(scale, length) {
      let atScale = built.get(scale);
      if (!atScale) {
        atScale = new Map();
        built.set(scale, atScale);
      }
      const known = atScale.get(length);
      if (known) return known;
      const unit = stitch.build({ ...scaledValues(stitch, asked, scale), repeat: length });
      atScale.set(length, unit);
      return unit;
    },
  };
}

/** Values for a figure made smaller: lengths shrink as far as its file lets them; shares, counts and angles stay. */
export function scaledValues({ parameters }: Figure, asked: Values, scale: number): Record<string, number> {
  return Object.fromEntries(
    parameters.map(({ name, unit, min, default: usual }) => {
      const value = asked[name] ?? usual;
      return [name, unit === 'mm' ? Math.max(Math.min(value, min), value * scale) : value];
    }),
  );
}

/** @throws InputError when a size asked for is unknown to the figure or out of its range */
export function checkValues(figure: Figure, asked: Values): void {
  const names = figure.parameters.map(({ name }) => name);
  for (const name of Object.keys(asked)) {
    if (names.includes(name)) continue;
    throw new InputError(
      'unknown-parameter',
      figure.name,
      `it has no parameter "${name}"`,
      `did you mean "${nearestName(name, names)}"? It has ${names.join(', ')}`,
    );
  }
  for (const { name, unit, min, max } of figure.parameters) {
    const value = asked[name];
    if (value === undefined || (value >= min && value <= max)) continue;
    const of = unit === 'mm' ? ' mm' : unit === 'degree' ? ' degrees' : '';
    throw new InputError(
      'size-out-of-range',
      `${figure.name} ${name}`,
      `${value}${of} is out of range`,
      `${figure.title.toLowerCase()} takes ${min} to ${max}${of}`,
    );
  }
}

/** Reach to both hands of a line of these units; `hand` -1 exchanges left and right. */
export function reachOf(unit: Unit, glide: boolean, hand: 1 | -1): Reach {
  const { left, right } = unit.reach;
  if (glide) return { left: Math.max(left, right), right: Math.max(left, right) };
  return hand === 1 ? { left, right } : { left: right, right: left };
}
