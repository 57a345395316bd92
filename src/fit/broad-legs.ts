import type { IsOnCloth } from './cloth.js';
import type { Chain } from './fit.js';

/** A round thing is looked at in these directions. */
const AROUND = Array.from({ length: 8 }, (_, k) => [
  Math.cos((k * Math.PI) / 4),
  Math.sin((k * Math.PI) / 4),
]);

/** Whether a knot or a satin lies on the cloth as broad as it is; a leg without breadth does. */
export function isBroadlyOn({ path, pathStart, size }: Chain, leg: number, on: IsOnCloth): boolean {
  const around = size[leg] / 2;
  if (around === 0) return true;
  for (let k = pathStart[leg]; k < pathStart[leg + 1]; k++) {
    const [x, y] = [path[2 * k], path[2 * k + 1]];
    for (const [dx, dy] of AROUND) if (!on(x + dx * around, y + dy * around)) return false;
  }
  return true;
}

/** Whether all of a figure lies on the cloth, its knots and satins as broad as they are. */
export function isBroadlyWithin(chain: Chain, on: IsOnCloth): boolean {
  const { path } = chain;
  for (let i = 0; i < path.length; i += 2) if (!on(path[i], path[i + 1])) return false;
  return chain.size.every((_, leg) => isBroadlyOn(chain, leg, on));
}
