import type { DensityAsked } from '../../src/formats/density-asked.js';
import type { BlockSource, Dressing, Hooping, Laid, Machine } from '../../src/formats/dressing.js';
import type { Line } from '../core/messages.js';
import { withTreatment } from './edits.js';

/** Changes of the block as a whole: its hoop, how large it is and how it lies, and what is sewn first. */

/** The sewing field it is for; without one it cannot be as large as the hoop takes. */
export function withHoop(dressing: Dressing, hoop: Dressing['hoop']): Dressing {
  const { scale, ...block } = dressing.block;
  return hoop === null && scale === 'hoop' ? { ...dressing, hoop, block } : { ...dressing, hoop };
}

/** Larger or smaller by a factor, or as large as the hoop takes; 1 is as drawn. */
export const withScale = (dressing: Dressing, scale: number | 'hoop'): Dressing =>
  withPlaced(dressing, { scale: scale === 1 ? undefined : scale });

/** Turned counterclockwise as seen, degrees: from above -180 to 180. */
export function withTurn(dressing: Dressing, degrees: number): Dressing {
  const turn = degrees - 360 * Math.ceil((degrees - 180) / 360);
  return withPlaced(dressing, { turn: turn === 0 ? undefined : turn });
}

export const withLeftOut = (dressing: Dressing, stop: number, isOut: boolean): Dressing => {
  const others = (dressing.block.leaveOut ?? []).filter((one) => one !== stop);
  const leaveOut = isOut ? [...others, stop].sort((a, b) => a - b) : others;
  return withPlaced(dressing, { leaveOut: leaveOut.length > 0 ? leaveOut : undefined });
};

/** What is undefined is left away. */
function withPlaced(dressing: Dressing, part: Partial<BlockSource>): Dressing {
  return { ...dressing, block: without({ ...dressing.block, ...part }) };
}

/** What is sewn first when a finished block is hooped; nothing is told where nothing is. */
export function withHooping(dressing: Dressing, part: Hooping): Dressing {
  const { hooping: _, ...rest } = dressing;
  const told = without({ ...dressing.hooping, ...part });
  // crosses at no place are none
  const hooping = told.align?.length ? told : without({ ...told, align: undefined, crosses: undefined });
  return Object.keys(hooping).length > 0 ? { ...rest, hooping } : rest;
}

/** A place at which the needle shows whether the block lies right, or no more. */
export function withAligned(dressing: Dressing, at: readonly [number, number], isOne: boolean): Dressing {
  const others = (dressing.hooping?.align ?? []).filter((one) => !isSame(one, at));
  return withHooping(dressing, { align: isOne ? [...others, at] : others });
}

export const isAligned = ({ hooping }: Dressing, at: readonly [number, number]): boolean =>
  hooping?.align?.some((one) => isSame(one, at)) ?? false;

const isSame = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.01;

/** Density is told from where this cloth bears it, but for measures of which the dressing has limits of its own. */
export const withCloth = (dressing: Dressing, cloth: NonNullable<DensityAsked['cloth']>): Dressing => ({
  ...dressing,
  density: { ...dressing.density, cloth },
});

export const withMachine = (dressing: Dressing, part: Machine): Dressing => ({
  ...dressing,
  machine: without({ ...dressing.machine, ...part }),
});

/** What is sewn over a stop that came with the block, or nothing. */
export function withStopKeptClear(dressing: Dressing, stop: number, isClear: boolean): Dressing {
  const others = (dressing.keepClear ?? []).flatMap((one) => {
    if (!one.stops?.includes(stop)) return [one];
    const stops = one.stops.filter((other) => other !== stop);
    return stops.length > 0 ? [{ ...one, name: nameOfStops(stops), stops }] : [];
  });
  const keepClear = isClear ? [...others, { name: nameOfStops([stop]), stops: [stop] }] : others;
  return { ...dressing, keepClear };
}

const nameOfStops = (stops: readonly number[]): string =>
  `stop${stops.length > 1 ? 's' : ''} ${stops.join(', ')}`;

/** Ribbon, braid or lace beneath a line's rows, or none. */
export const withLaid = (dressing: Dressing, line: Line, laid: Laid | null): Dressing =>
  withTreatment(dressing, line, ({ laid: _, ...treatment }) => (laid ? { ...treatment, laid } : treatment));

/** A record without what is undefined in it. */
const without = <T extends object>(record: T): T =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as T;
