import { InputError } from '../input-error.js';
import type { Dictionary } from '../stitches/dictionary.js';
import { nearestName } from '../stitches/nearest-name.js';
import type { Ornament } from '../stitches/stitch.js';

/** @throws InputError when the dictionary has no such ornament */
export function ornamentNamed({ ornaments }: Dictionary, name: string): Ornament {
  const ornament = ornaments.get(name);
  if (ornament) return ornament;
  throw new InputError(
    'unknown-ornament',
    '',
    `there is no ornament "${name}"`,
    ornaments.size
      ? `did you mean "${nearestName(name, [...ornaments.keys()])}"?`
      : 'the dictionary has none',
  );
}
