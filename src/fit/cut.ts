import type { LegKind } from '../stitches/stitch.js';
import { isBroadlyOn } from './broad-legs.js';
import type { IsOnCloth } from './cloth.js';
import type { Chain } from './fit.js';
import { lengthOf, type Shortened, withLegs } from './kept-legs.js';

/** What is left of a cut leg is dropped below this length, mm: a stitch that short only makes a lump. */
const SHORTEST_STUB = 0.8;
/** Figures that lose their shape when cut: they are left out whole. */
const WHOLE: ReadonlySet<LegKind> = new Set<LegKind>(['loop', 'knot', 'petal', 'cord']);

/**
 * A chain cut to the cloth it may lie on: straights and curves end at the line, figures that cross it are left out,
 * and what then hangs loose as a mere stub goes too. Linear in the legs.
 *
 * @param broadly where knots and satins must lie as broad as they are
 */
export function cutChain(chain: Chain, allowed: IsOnCloth, broadly: IsOnCloth | null = null): Chain {
  const nodeCount = chain.nodes.length / 2;
  const nodeIn = new Uint8Array(nodeCount);
  let within = 0;
  for (let i = 0; i < nodeCount; i++) {
    if (!allowed(chain.nodes[2 * i], chain.nodes[2 * i + 1])) continue;
    nodeIn[i] = 1;
    within++;
  }
  const kept = new Uint8Array(chain.from.length).fill(1);
  const shortened = new Map<number, Shortened>();
  for (let leg = 0; leg < kept.length; leg++) {
    const fromIn = nodeIn[chain.from[leg]] === 1;
    const toIn = nodeIn[chain.to[leg]] === 1;
    if (broadly && !isBroadlyOn(chain, leg, broadly)) {
      kept[leg] = 0;
      continue;
    }
    if (fromIn && toIn) {
      // a curve or a loop may belly over the line between two holes that do not
      if (!bellies(chain, leg, allowed)) continue;
      const path = chain.path.slice(2 * chain.pathStart[leg], 2 * chain.pathStart[leg + 1]);
      if (!WHOLE.has(chain.kind[leg]) && drawnIn(path, allowed)) {
        shortened.set(leg, { path: [...path], atTo: null });
      } else kept[leg] = 0;
      continue;
    }
    kept[leg] = 0;
    if (fromIn === toIn || WHOLE.has(chain.kind[leg]) || chain.kind[leg] === 'under') continue;
    const path = chain.path.subarray(2 * chain.pathStart[leg], 2 * chain.pathStart[leg + 1]);
    const part = keptPart(path, fromIn, allowed);
    if (lengthOf(part, 0, part.length / 2) < SHORTEST_STUB) continue;
    kept[leg] = 1;
    shortened.set(leg, { path: part, atTo: fromIn });
  }
  keepStepsBehind(chain, nodeIn, kept, shortened);
  dropHalfLoops(chain, kept);
  if (within === nodeCount && shortened.size === 0 && !kept.includes(0)) return chain;
  return withLegs(chain, kept, shortened);
}

/**
 * Where a stroke ends at the line instead of at its hole, the needle goes down there, and what the hand does behind the
 * cloth from that hole to the next stroke it does from there: so a treatment is not cut in two.
 */
function keepStepsBehind(
  chain: Chain,
  nodeIn: Uint8Array,
  kept: Uint8Array,
  shortened: Map<number, Shortened>,
): void {
  if (shortened.size === 0) return;
  const { from, to, nodes } = chain;
  const strokeAt = new Map<number, number>();
  for (const [leg, { atTo }] of shortened) {
    if (atTo !== null) strokeAt.set(atTo ? to[leg] : from[leg], leg);
  }
  for (let leg = 0; leg < kept.length; leg++) {
    if (chain.kind[leg] !== 'under' || nodeIn[from[leg]] === nodeIn[to[leg]]) continue;
    const isFromIn = nodeIn[from[leg]] === 1;
    const stroke = strokeAt.get(isFromIn ? to[leg] : from[leg]);
    if (stroke === undefined) continue;
    const { path, atTo } = shortened.get(stroke)!;
    const end = atTo ? path.slice(-2) : path.slice(0, 2);
    const inner = isFromIn ? from[leg] : to[leg];
    const hole = [nodes[2 * inner], nodes[2 * inner + 1]];
    kept[leg] = 1;
    shortened.set(leg, {
      path: isFromIn ? [...hole, ...end] : [...end, ...hole],
      atTo: isFromIn,
      endOf: stroke,
    });
  }
}

/** Both halves of a loop share their class and unit, and go together. */
function dropHalfLoops({ kind, legClass, unit }: Chain, kept: Uint8Array): void {
  const lost = new Set<string>();
  const loop = (leg: number) => `${unit[leg]}/${legClass[leg]}`;
  for (let leg = 0; leg < kept.length; leg++) if (kind[leg] === 'loop' && !kept[leg]) lost.add(loop(leg));
  if (lost.size === 0) return;
  for (let leg = 0; leg < kept.length; leg++) if (kind[leg] === 'loop' && lost.has(loop(leg))) kept[leg] = 0;
}

function bellies(chain: Chain, leg: number, allowed: (x: number, y: number) => boolean): boolean {
  for (let k = chain.pathStart[leg] + 1; k + 1 < chain.pathStart[leg + 1]; k++) {
    if (!allowed(chain.path[2 * k], chain.path[2 * k + 1])) return true;
  }
  return false;
}

/** Draws the points of a path that lie off the cloth in towards its chord; false when even that is not on it. */
function drawnIn(path: Float64Array, allowed: (x: number, y: number) => boolean): boolean {
  const n = path.length / 2;
  const [x0, y0, x1, y1] = [path[0], path[1], path[2 * n - 2], path[2 * n - 1]];
  for (let k = 1; k + 1 < n; k++) {
    const [x, y] = [path[2 * k], path[2 * k + 1]];
    if (allowed(x, y)) continue;
    const t = k / (n - 1);
    const [cx, cy] = [x0 + t * (x1 - x0), y0 + t * (y1 - y0)];
    if (!allowed(cx, cy)) return false;
    path.set(edgeBetween(cx, cy, x, y, allowed), 2 * k);
  }
  return true;
}

/** The part of a path on the cloth side of its first crossing, as seen from the end that is on the cloth. */
function keptPart(
  path: Float64Array,
  fromStart: boolean,
  allowed: (x: number, y: number) => boolean,
): number[] {
  const n = path.length / 2;
  const order = fromStart ? (k: number) => k : (k: number) => n - 1 - k;
  const kept: number[] = [];
  for (let k = 0; k < n; k++) {
    const x = path[2 * order(k)];
    const y = path[2 * order(k) + 1];
    if (allowed(x, y)) {
      kept.push(x, y);
      continue;
    }
    const [x0, y0] = kept.slice(-2);
    kept.push(...edgeBetween(x0, y0, x, y, allowed));
    break;
  }
  if (fromStart) return kept;
  const back: number[] = [];
  for (let k = kept.length - 2; k >= 0; k -= 2) back.push(kept[k], kept[k + 1]);
  return back;
}

/** Where the cloth ends on the way from a place on it to one off it, to a ten-thousandth of the way: found by halving. */
function edgeBetween(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  allowed: (x: number, y: number) => boolean,
): [number, number] {
  let inside = 0;
  let outside = 1;
  for (let step = 0; step < 20; step++) {
    const middle = (inside + outside) / 2;
    if (allowed(x0 + middle * (x1 - x0), y0 + middle * (y1 - y0))) inside = middle;
    else outside = middle;
  }
  return [x0 + inside * (x1 - x0), y0 + inside * (y1 - y0)];
}
