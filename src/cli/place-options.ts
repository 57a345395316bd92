import type { Dressing } from '../formats/dressing.js';
import { InputError } from '../input-error.js';

/** How large a block is to be, how it is to lie and how its stops are sewn; said on the command line, it goes before what a dressing says. */
export interface PlaceOptions {
  readonly scale?: number;
  readonly turn?: number;
  readonly hoop?: HoopSize;
  readonly fitHoop?: HoopSize;
  readonly leaveOut?: number[];
  readonly stopPer?: 'row' | 'thread' | 'all';
  readonly pull?: number;
}

export interface HoopSize {
  readonly width: number;
  readonly height: number;
}

/** Parser of a sewing field such as '130x180', mm. */
export function hoopOption(option: string): (word: string) => HoopSize {
  return (word) => {
    const [width, height] =
      /^\s*(\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)\s*$/i.exec(word)?.slice(1).map(Number) ?? [];
    if (width >= 1 && height >= 1 && width <= 10_000 && height <= 10_000) return { width, height };
    throw new InputError(
      'bad-hoop',
      option,
      `'${word}' is no sewing field`,
      'give millimeters across and down, such as 130x180',
    );
  };
}

/** @throws InputError when two of them say how large the block is to be */
export function checkPlaceOptions({ scale, fitHoop, hoop }: PlaceOptions): void {
  const beside = scale !== undefined ? '--scale' : hoop ? '--hoop' : null;
  if (!fitHoop || !beside) return;
  throw new InputError(
    'two-asks',
    beside,
    'stands beside --fit-hoop, which says this itself',
    'leave one of them away',
  );
}

/** The dressing with its block placed and its stops sewn as the options say. */
export function placedByOptions<D extends Pick<Dressing, 'block' | 'hoop'>>(
  dressing: D,
  { scale, turn, hoop, fitHoop, leaveOut, stopPer, pull }: PlaceOptions,
): D {
  const size = fitHoop ? ('hoop' as const) : scale;
  return {
    ...dressing,
    hoop: fitHoop ?? hoop ?? dressing.hoop,
    ...(stopPer && { stopPer }),
    ...(pull !== undefined && { pull }),
    block: {
      ...dressing.block,
      ...(size !== undefined && { scale: size }),
      ...(turn !== undefined && { turn }),
      ...(leaveOut && { leaveOut }),
    },
  };
}
