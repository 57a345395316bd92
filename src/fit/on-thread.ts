import type { Unit } from '../stitches/stitch.js';
import type { Layer } from './lay.js';

/** A place lies on a thread when it is this near to it, mm: rounding of a file's arithmetic. */
const ON = 1e-6;
/** How much of a thread at either end does not count as its middle, as a share: there is its hole. */
const END = 1e-3;

/** A straight thread of a unit: the nodes it goes between. */
export interface Thread {
  readonly from: number;
  readonly to: number;
}

/** The threads that pass over its nodes, where nothing but straight thread and knots is fastened: by node, mostly null. */
export function threadsOverNodes(unit: Unit): readonly (Thread | null)[] {
  const { nodes, legs } = unit;
  const curved = new Set<number>();
  for (const { kind, path, from, to } of legs) {
    if (kind !== 'knot' && path.length > 4) curved.add(from).add(to);
  }
  return Array.from({ length: nodes.length / 2 }, (_, node) =>
    curved.has(node)
      ? null
      : (threadOver(unit, nodes[2 * node], nodes[2 * node + 1]) ?? threadThrough(unit, node)),
  );
}

/** The thread that goes straight on through a node, beneath another one before or after it: all of its pieces, end to end. */
function threadThrough({ nodes, legs }: Unit, node: number): Thread | null {
  const pieces = legs.filter(
    ({ kind, bends, path }) => bends && path.length === 4 && (kind === 'straight' || kind === 'under'),
  );
  for (const before of pieces) {
    if (before.to !== node) continue;
    const [du, dv] = along(nodes, before);
    // each piece leads on the same way, so that there is an end to them
    const goesOn = (piece: Thread): boolean => {
      const [eu, ev] = along(nodes, piece);
      return du * eu + dv * ev > 0 && Math.abs(du * ev - dv * eu) < ON * (du * eu + dv * ev);
    };
    const after = pieces.filter((piece) => piece.from === node && goesOn(piece));
    if (after.length === 0 || (before.kind === 'under') === (after[0].kind === 'under')) continue;
    let { from } = before;
    let { to } = after[0];
    for (let next = after[0]; next; next = pieces.find((one) => one.from === to && goesOn(one))!)
      to = next.to;
    for (let last = before; last; last = pieces.find((one) => one.to === from && goesOn(one))!)
      from = last.from;
    return { from, to };
  }
  return null;
}

const along = (nodes: Float64Array, { from, to }: Thread): [number, number] => [
  nodes[2 * to] - nodes[2 * from],
  nodes[2 * to + 1] - nodes[2 * from + 1],
];

/**
 * The taut thread of a unit whose middle passes over a place. Where the line bends such a place has to be looked for on
 * the thread: a thread stays straight.
 */
export function threadOver({ nodes, legs }: Unit, u: number, v: number): Thread | null {
  for (const { kind, bends, from, to } of legs) {
    if (kind !== 'straight' || !bends || from === to) continue;
    const [du, dv] = [nodes[2 * to] - nodes[2 * from], nodes[2 * to + 1] - nodes[2 * from + 1]];
    const [pu, pv] = [u - nodes[2 * from], v - nodes[2 * from + 1]];
    const squared = du * du + dv * dv;
    const share = (pu * du + pv * dv) / squared;
    if (share < END || share > 1 - END) continue;
    if (Math.abs(du * pv - dv * pu) < ON * Math.sqrt(squared)) return { from, to };
  }
  return null;
}

/**
 * Lays a place that a thread passes over: where the thread, taut between its holes, crosses the upright of the line at u.
 * Writes into `lay.out` as `lay.at` does; the direction is that of the line there.
 * @param holes u and v of the thread's two ends on the line
 * @param beside v of the row's own line
 */
export function layOnThread(
  lay: Layer,
  holes: readonly (readonly [u: number, v: number])[],
  u: number,
  beside: number,
): void {
  const [[ax, ay], [bx, by]] = holes.map(([holeU, holeV]) => {
    lay.at(holeU, holeV);
    return [lay.out[0], lay.out[1]];
  });
  lay.at(u, beside);
  const [x, y, theta] = lay.out;
  const [tx, ty] = [Math.cos(theta), Math.sin(theta)];
  const whole = (bx - ax) * tx + (by - ay) * ty;
  if (Math.abs(whole) < ON) return;
  const share = Math.min(1, Math.max(0, ((x - ax) * tx + (y - ay) * ty) / whole));
  lay.out[0] = ax + share * (bx - ax);
  lay.out[1] = ay + share * (by - ay);
}
