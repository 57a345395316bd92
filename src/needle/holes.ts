import type { Chain } from '../fit/fit.js';
import { float32s, int32s, uint8s, uint16s } from '../geometry/flat.js';
import type { Trail } from './graph/trail.js';
import { type Legs, Manner } from './legs.js';
import { SHORTEST_EVER } from './needle-points.js';
import type { Craft } from './run.js';
import { TIE } from './tie.js';

/**
 * Where the needle pierces at shared points. One point is one hole up to the hole limit; later visits scatter about it.
 * Where many rays meet, and under a knot, each leg ends on a small ring instead.
 */
export interface Holes {
  /** how often the needle has come to each node so far, and will to tie on and off there */
  readonly visits: Int32Array;
  /** radius of the ring about each node, mm; 0 where there is none */
  readonly ring: Float32Array;
  /** passes of each leg: all that will be sewn, and those sewn so far */
  readonly whole: Uint8Array;
  readonly sewn: Uint8Array;
  /** direction in which the chain's first leg sets out, radians: a turned chain has its holes turned with it */
  readonly heading: number;
  /** the hand to which the chain first leaves that direction, 1 left, -1 right: a mirrored one has them mirrored */
  readonly hand: 1 | -1;
}

/** Legs that meet in one point before it gets a ring. */
const MANY_RAYS = 6;
const RING = 0.5;
/** Under a knot legs end where its inner turn runs. */
export const KNOT_RING = 0.35;
/** Scattered holes lie this far out, and each the golden angle on from the one before, so that no two coincide. */
const SCATTER = 0.2;
const SCATTER_MORE = 0.1;
const GOLDEN = Math.PI * (3 - Math.sqrt(5));

/** The tie on a shorter leg ends in the hole at its other end, unless that hole scatters away from it, mm. */
const TIED_WHOLE = TIE + SHORTEST_EVER + SCATTER + SCATTER_MORE;

/** Holes of a chain before anything is sewn; `trails` are all that will be. */
export function holesFor(chain: Chain, trails: readonly Trail[], legs: Legs, craft: Craft): Holes {
  const nodes = chain.nodes.length >> 1;
  const visits = int32s(nodes);
  const rays = uint16s(nodes);
  const ring = float32s(nodes);
  const whole = uint8s(chain.from.length);
  for (const trail of trails) {
    for (let i = 0; i < trail.length; i++) {
      const leg = trail[i] >> 1;
      const a = chain.from[leg];
      const b = chain.to[leg];
      visits[trail[i] & 1 ? a : b]++;
      if (whole[leg]++ > 0) continue;
      if (legs.manner[leg] === Manner.Knot) ring[a] = KNOT_RING;
      else if (chain.kind[leg] !== 'under') {
        rays[a]++;
        rays[b]++;
      }
    }
  }
  for (let node = 0; node < nodes; node++) {
    if (ring[node] === 0 && rays[node] >= MANY_RAYS && visits[node] > craft.holeLimit) ring[node] = RING;
  }
  visits.fill(0);
  for (const trail of trails) {
    if (trail.length === 0) continue;
    for (const step of [trail[0], trail[trail.length - 1] ^ 1]) {
      const leg = step >> 1;
      const back = step & 1;
      visits[back ? chain.to[leg] : chain.from[leg]]++;
      if (legs.length[leg] < TIED_WHOLE) visits[back ? chain.from[leg] : chain.to[leg]]++;
    }
  }
  const heading = headingOf(chain);
  return { visits, ring, whole, sewn: uint8s(whole.length), heading, hand: handOf(chain, heading) };
}

/** What lies nearer to the line a chain sets out on says nothing of its hand, mm. */
const OFF_LINE = 0.2;

/** Shorter ways show no direction, mm. */
const NO_WAY = 1e-6;

function headingOf({ path, facing }: Chain): number {
  const [x, y] = path;
  for (let i = 2; i < path.length; i += 2) {
    const [dx, dy] = [path[i] - x, path[i + 1] - y];
    if (Math.hypot(dx, dy) > NO_WAY) return Math.atan2(dy, dx);
  }
  return facing?.theta ?? 0;
}

function handOf({ path, facing }: Chain, heading: number): 1 | -1 {
  const [x, y] = path;
  const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
  for (let i = 2; i < path.length; i += 2) {
    const left = (path[i] - x) * sin - (path[i + 1] - y) * cos;
    if (Math.abs(left) > OFF_LINE) return left > 0 ? 1 : -1;
  }
  return facing?.hand ?? 1;
}

/** Offset of a node's hole on a given visit, mm: zero up to the limit. */
export function scatter(
  visit: number,
  craft: Craft,
  { heading, hand }: Pick<Holes, 'heading' | 'hand'>,
  out: Float64Array,
): void {
  const over = visit - craft.holeLimit;
  if (over < 0) {
    out[0] = 0;
    out[1] = 0;
    return;
  }
  const radius = SCATTER + SCATTER_MORE * ((over * Math.SQRT2) % 1);
  out[0] = radius * Math.cos(heading + hand * over * GOLDEN);
  out[1] = radius * Math.sin(heading + hand * over * GOLDEN);
}
