import { InputError } from '../input-error.js';
import { listOption } from './numbers.js';

/** The fabric of some patches as the maker says it: a word is a color with its share, or names a picture. */
export interface FabricOption {
  readonly said: string;
  readonly patches: readonly number[];
  readonly words: readonly string[];
}

/** Parser of fabrics such as '3=navy', '4,6=navy:70,white:30,busy:0.6' or '5=calico.jpg'; gathers one after the other. */
export function fabricsOption(
  option: string,
): (word: string, before?: readonly FabricOption[]) => FabricOption[] {
  const list = listOption(option);
  return (word, before = []) => {
    const [patches, fabric] = /^\s*([\d,\s-]+?)\s*=\s*(.*\S)\s*$/.exec(word)?.slice(1) ?? [];
    if (fabric === undefined) {
      throw new InputError(
        'bad-fabric',
        option,
        `'${word}' names no fabric of a patch`,
        'give a patch and its color, several, or a picture, such as 3=#7a2f3b, 3=navy:70,white:30 or 3=calico.jpg',
      );
    }
    // commas inside rgb(...) are the color's own
    const words = fabric.split(/,(?![^(]*\))/).map((part) => part.trim());
    const asked = { said: `${option} ${word.trim()}`, patches: list(patches), words };
    const clothed = new Set(before.flatMap((other) => other.patches));
    const twice = asked.patches.find((patch) => clothed.has(patch));
    if (twice === undefined) return [...before, asked];
    throw new InputError(
      'given-twice',
      asked.said,
      `patch ${twice} is given a fabric twice`,
      'give it one, which may have several colors',
    );
  };
}
