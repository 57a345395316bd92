import type { Chain } from './fit.js';
import type { SpanQuestion } from './fit-span.js';
import type { Laid } from './lay-rows.js';
import { BULKY, OFF_JUNCTION } from './leave-out.js';

/**
 * Whether nothing of what is laid on a span will be left, since all of it is thick and lies on the bulk of the junctions
 * at its ends. The first leg that stays tells.
 */
export const isLost = ({ bulk }: SpanQuestion, laid: Laid): boolean =>
  bulk.length > 0 &&
  rowChains(laid).every((chain) =>
    chain.kind.every((kind, leg) => kind === 'under' || isOnBulk(chain, leg, bulk)),
  );

/** Whether anything of what is laid on a span will be left out there. */
export const losesAny = ({ bulk }: SpanQuestion, laid: Laid): boolean =>
  bulk.length > 0 && rowChains(laid).some((chain) => chain.kind.some((_, leg) => isOnBulk(chain, leg, bulk)));

const rowChains = ({ layers }: Laid): Chain[] =>
  layers.flatMap(({ kind, chains }) => (kind === 'row' ? chains : []));

function isOnBulk({ kind, size, path, pathStart }: Chain, leg: number, bulk: readonly number[]): boolean {
  if (!BULKY.has(kind[leg])) return false;
  const around = OFF_JUNCTION + size[leg] / 2;
  for (let p = 2 * pathStart[leg]; p < 2 * pathStart[leg + 1]; p += 2) {
    for (let i = 0; i < bulk.length; i += 2) {
      if (Math.hypot(path[p] - bulk[i], path[p + 1] - bulk[i + 1]) <= around) return true;
    }
  }
  return false;
}
