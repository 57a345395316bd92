import { leastJumps } from './least-jumps.js';
import { nearestFirst } from './nearest-first.js';
import { jumpBetween, legalOrder, type Walk, walkLength } from './walk.js';
import { WalkSearch } from './walk-search.js';

/** Up to this many pieces the walk is exact; the table has 2^n times n entries. */
const EXACT = 11;
/** A walk that saves less than this share of the jumps is not worth leaving the order given. */
const WORTH = 0.01;
/** From so many beginnings pieces are walked from nearest to nearest, and in the order given; more pieces than MANY from one. */
const BEGINNINGS = 8;
const MANY = 2000;

/**
 * The order in which pieces are sewn so that the jumps between them are short, all that `earlier` asks kept: the
 * sequential ordering problem (Escudero, 1988). A piece is never reversed, since the order in which a hand works it would
 * be. Exact for up to 11 pieces. More are walked from nearest to nearest, then stretches of the walk change
 * places with the stretch beside them while that makes it shorter: in tests within 5 % of the shortest. The order given,
 * which keeps to the line that pieces stand on, stays where it is within 1 % of that. The same pieces give the same order.
 * @param effort share of the search that is worth it for pieces anywhere; those along a line need little
 */
export function shortWalk(walk: Walk, { exactUpTo = EXACT, effort = 1 } = {}): Int32Array {
  const given = legalOrder(walk);
  const n = given.length;
  if (n < 2 || leastJumps(walk) >= (1 - WORTH) * walkLength(walk, given)) return given;
  const best = n <= exactUpTo ? exact(walk) : searched(walk, given, effort);
  return walkLength(walk, best) < (1 - WORTH) * walkLength(walk, given) ? best : given;
}

function searched(walk: Walk, given: Int32Array, effort: number): Int32Array {
  const free = [...given].filter((piece) => walk.earlier[piece].length === 0);
  const beginnings = given.length > MANY ? 1 : Math.min(BEGINNINGS, free.length);
  const starts = Array.from({ length: beginnings }, (_, k) =>
    nearestFirst(walk, free[Math.floor((k * free.length) / beginnings)]),
  );
  if (given.length <= MANY) starts.push(given);
  const settled = starts.map((start) => new WalkSearch(walk, start).settled());
  const best = settled.reduce((a, b) => (walkLength(walk, b) < walkLength(walk, a) ? b : a));
  return new WalkSearch(walk, best).shorten(effort);
}

/** By dynamic programming over the sets already sewn and the last of them (Held and Karp, 1962). */
function exact(walk: Walk): Int32Array {
  const n = walk.earlier.length;
  const { ends } = walk;
  const all = (1 << n) - 1;
  const waits = walk.earlier.map((pieces) => pieces.reduce((mask, piece) => mask | (1 << piece), 0));
  const jump = new Float64Array(n * n);
  for (let a = 0; a < n; a++) {
    for (let b = 0; b < n; b++) jump[a * n + b] = jumpBetween(ends, a, b);
  }
  // least[sewn * n + last]: the shortest walk over all the others after those
  const least = new Float64Array((all + 1) * n).fill(Number.POSITIVE_INFINITY);
  least.fill(0, all * n);
  for (let sewn = all - 1; sewn > 0; sewn--) {
    for (let next = 0; next < n; next++) {
      if (sewn & (1 << next) || waits[next] & ~sewn) continue;
      const rest = least[(sewn | (1 << next)) * n + next];
      for (let last = 0; last < n; last++) {
        if (!(sewn & (1 << last))) continue;
        const length = jump[last * n + next] + rest;
        if (length < least[sewn * n + last]) least[sewn * n + last] = length;
      }
    }
  }
  const order = new Int32Array(n);
  let sewn = 0;
  for (let at = 0; at < n; at++) {
    let next = -1;
    let shortest = Number.POSITIVE_INFINITY;
    for (let piece = 0; piece < n; piece++) {
      if (sewn & (1 << piece) || waits[piece] & ~sewn) continue;
      const way = at === 0 ? 0 : jump[order[at - 1] * n + piece];
      const length = way + least[(sewn | (1 << piece)) * n + piece];
      if (length >= shortest) continue;
      shortest = length;
      next = piece;
    }
    order[at] = next;
    sewn |= 1 << next;
  }
  return order;
}
