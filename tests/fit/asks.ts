import type { LineAsk } from '../../src/fit/ask.js';
import type { Chain, SeamFit } from '../../src/fit/fit.js';
import { sized } from '../../src/fit/sized.js';
import { stitchNamed } from '../stitches/dictionary.js';

export function askFor(
  seam: number | 'outline',
  stitch: string,
  more: Partial<Omit<LineAsk, 'sized'>> & { readonly sizes?: Readonly<Record<string, number>> } = {},
): LineAsk {
  const { sizes, ...rest } = more;
  return {
    seam,
    sized: sized(stitchNamed(stitch), sizes ?? {}),
    side: 'left',
    reverse: false,
    manner: 'tuck',
    shortOf: new Set(),
    passes: 3,
    offset: 0,
    followers: [],
    accents: [],
    laid: 0,
    ...rest,
  };
}

/** All needle points that legs may use, x y pairs. */
export function legPoints(chains: readonly Chain[]): [number, number][] {
  return chains.flatMap(({ path, pathStart, from }) =>
    Array.from({ length: pathStart[from.length] }, (_, i): [number, number] => [
      path[2 * i],
      path[2 * i + 1],
    ]),
  );
}

/** Every chain that a line got. */
export const chainsOf = ({ layers }: SeamFit): Chain[] => layers.flatMap(({ chains }) => chains);
