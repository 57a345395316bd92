import type { BenchUnit } from '../../core/bench-messages.js';

/** Something on the sheet that can be dragged: a point, or how wide a leg is. */
export interface Handle {
  /** of a point its name, of a width `width of petal` */
  readonly name: string;
  readonly u: number;
  readonly v: number;
  /** of a width: the leg, and which way is wider */
  readonly widens: { readonly leg: string; readonly u: number; readonly v: number } | null;
}

/** All that can be dragged; the points first. Copies are as wide as each other: the first has the handle. */
export function handlesOf({ spots, legs }: BenchUnit): Handle[] {
  const widths = new Map<string, Handle>();
  for (const { name, kind, path, size } of legs) {
    const leg = name.replace(/\[.*/, '');
    if (widths.has(leg)) continue;
    const [u, v] = [path[0], path[1]];
    const [du, dv] = [path[path.length - 2] - u, path[path.length - 1] - v];
    const long = Math.hypot(du, dv) || 1;
    const [nu, nv] = [-dv / long, du / long];
    const at = (cu: number, cv: number, half: number): Handle => ({
      name: `width of ${leg}`,
      u: cu + nu * half,
      v: cv + nv * half,
      widens: { leg, u: nu, v: nv },
    });
    if (kind === 'loop') {
      const [belly, along] = bellyOf(path, [u, v], [nu, nv]);
      widths.set(leg, at(u + (du / long) * along, v + (dv / long) * along, belly));
    } else if (kind === 'petal' || kind === 'cord') widths.set(leg, at(u + du / 2, v + dv / 2, size / 2));
    else if (kind === 'knot') {
      const handle = { name: `width of ${leg}`, u: u + size / 2, v, widens: { leg, u: 1, v: 0 } };
      widths.set(leg, handle);
    }
  }
  return [...spots.map((spot) => ({ ...spot, widens: null })), ...widths.values()];
}

/** How far a loop's half swings to its side at most, and how far along its axis. */
function bellyOf(
  path: Float64Array,
  [u, v]: readonly [number, number],
  [nu, nv]: readonly [number, number],
): [number, number] {
  let [belly, along] = [0, 0];
  for (let i = 0; i < path.length; i += 2) {
    const [pu, pv] = [path[i] - u, path[i + 1] - v];
    const side = pu * nu + pv * nv;
    if (Math.abs(side) > Math.abs(belly)) [belly, along] = [side, pu * nv - pv * nu];
  }
  return [belly, along];
}
