import { addMistake, type Mistake } from './mistake.js';
import type { Arithmetic, LegRecord } from './stitch-record.js';

/** Straight from point to point, pulled by control points, or led through points. */
export type Bend = 'none' | 'pulled' | 'led';

/** The points that bend a leg, and how. */
export function bendOf(
  leg: LegRecord,
  where: string,
  mistakes: Mistake[],
): { list: readonly string[]; bend: Bend; part: 'via' | 'through' } {
  const pulled = ('via' in leg && leg.via) || [];
  const led = ('through' in leg && leg.through) || [];
  if (leg.kind === 'curve' && pulled.length > 0 === led.length > 0) {
    const wrong = led.length ? 'it has both "via" and "through"' : 'it has no point to bend by';
    addMistake(mistakes, where, wrong, 'one or two control points "via", or points it is led "through"');
  }
  if (led.length) return { list: led, bend: 'led', part: 'through' };
  return { list: pulled, bend: pulled.length && leg.kind !== 'under' ? 'pulled' : 'none', part: 'via' };
}

/** Names of the points where a leg begins and where it ends or turns back. */
export function endNames(leg: LegRecord): [from: string, to: string] {
  switch (leg.kind) {
    case 'loop':
    case 'petal':
      return [leg.base, leg.tip];
    case 'knot':
      return [leg.at, leg.at];
    default:
      return [leg.from, leg.to];
  }
}

/** Width of a loop, petal or cord, size of a knot; 0 for a bare thread. */
export function sizeOf(leg: LegRecord): Arithmetic {
  switch (leg.kind) {
    case 'knot':
      return leg.size;
    case 'loop':
    case 'petal':
    case 'cord':
      return leg.width;
    default:
      return 0;
  }
}
