/**
 * One stage of the route: the needle has just reached a unit for the first time, and what was left of the unit before
 * must be finished here. The legs of both are edges of a small multigraph.
 */
export interface Window {
  readonly nodes: number;
  /** edges: first what is left of the unit before, then this unit, both in hand order */
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** passes still to sew */
  readonly passes: readonly number[];
  /** passes of each edge before anything of it was sewn */
  readonly whole: readonly number[];
  /** how many edges belong to the unit before */
  readonly older: number;
  /** pairs of edges that cross, the one that the hand works later second: e0 f0 e1 f1 ... */
  readonly crossings: readonly number[];
  /** for each node its piece in what lies beyond this unit, 0 when nothing there touches it */
  readonly beyond: readonly number[];
  /** whether a leg of the very next unit starts there */
  readonly exit: readonly boolean[];
  readonly last: boolean;
}

/** Steps through a window: edge * 2, plus 1 when it is sewn from `to` to `from`. */
export interface Walk {
  readonly steps: readonly number[];
  readonly at: number;
  /** passes that remain of each edge */
  readonly left: readonly number[];
  /** 100 for a pass laid over the finished thread that belongs on top, 1 over the unfinished, 2 for a pass postponed */
  readonly cost: number;
}

interface State {
  readonly at: number;
  readonly left: readonly number[];
  readonly cost: number;
  readonly back: State | null;
  readonly step: number;
}

/** Cost of a pass laid over the finished thread of a leg that belongs on top. */
export const OVER_FINISHED = 100;
const OVER_BEGUN = 1;
const POSTPONED = 2;
/** How many part walks are pursued side by side: first the hand's own order alone, then more. */
const WIDTHS = [1, 8, 48];
/** Part walks looked at before a wider search is given up. */
const MOST_LOOKS = 20000;

/**
 * Walks from `at` so that what stays behind can still be sewn from the next unit on, by beam search in hand order
 * (Fleury's rule cuts off what cannot be finished). Null when there is no such walk.
 */
export function walkThrough(window: Window, at: number): Walk | null {
  const total = window.passes.reduce((a, b) => a + b, 0);
  let best: Walk | null = null;
  for (const width of WIDTHS) {
    if (width > 1 && width * total * 3 > MOST_LOOKS) break;
    const found = search(window, at, width);
    if (found && (!best || found.cost < best.cost)) best = found;
    if (best?.cost === 0) break;
  }
  return best;
}

function search(window: Window, at: number, width: number): Walk | null {
  const touching = edgesAt(window);
  const over = window.from.map(() => [] as number[]);
  for (let i = 0; i < window.crossings.length; i += 2)
    over[window.crossings[i]].push(window.crossings[i + 1]);
  let layer: State[] = [{ at, left: window.passes, cost: 0, back: null, step: -1 }];
  let best: { state: State; cost: number } | null = null;
  while (layer.length > 0) {
    for (const state of layer) {
      const cost = endCost(window, state);
      if (cost !== null && (!best || cost < best.cost)) best = { state, cost };
    }
    const least = layer.reduce((low, state) => Math.min(low, state.cost), Number.POSITIVE_INFINITY);
    if (best && best.cost <= least) break;
    layer = nextLayer(window, layer, touching, over, width);
  }
  return best && { steps: stepsTo(best.state), at: best.state.at, left: best.state.left, cost: best.cost };
}

function nextLayer(
  window: Window,
  layer: readonly State[],
  touching: readonly number[][],
  over: readonly number[][],
  width: number,
): State[] {
  const next = new Map<string, State>();
  for (const state of layer) {
    for (const edge of touching[state.at]) {
      if (state.left[edge] === 0) continue;
      const back = window.from[edge] !== state.at;
      const left = state.left.with(edge, state.left[edge] - 1);
      const goal = back ? window.from[edge] : window.to[edge];
      if (left[edge] === 0 && !finishable(window, left, goal)) continue;
      let cost = state.cost;
      for (const later of over[edge]) {
        if (state.left[later] === 0) cost += OVER_FINISHED;
        else if (state.left[later] < window.whole[later]) cost += OVER_BEGUN;
      }
      const key = String.fromCharCode(goal, ...left);
      const known = next.get(key);
      if (!known || cost < known.cost) {
        next.set(key, { at: goal, left, cost, back: state, step: 2 * edge + (back ? 1 : 0) });
      }
    }
  }
  // stable: among equals the hand's order comes first
  return [...next.values()].sort((a, b) => a.cost - b.cost).slice(0, width);
}

function edgesAt(window: Window): number[][] {
  const touching: number[][] = Array.from({ length: window.nodes }, () => []);
  window.from.forEach((node, edge) => {
    touching[node].push(edge);
    if (window.to[edge] !== node) touching[window.to[edge]].push(edge);
  });
  return touching;
}

/** What it costs to leave the window here, null when that cannot be. */
function endCost(window: Window, state: State): number | null {
  let rest = 0;
  for (let edge = 0; edge < state.left.length; edge++) {
    if (state.left[edge] === 0) continue;
    if (window.last || edge < window.older) return null;
    rest += state.left[edge];
  }
  if (window.last) return state.cost;
  if (!window.exit[state.at]) return null;
  // what is left and what lies beyond must hang together, and the next unit must be able to reach each leftover
  const piece = pieces(window, state.left, true);
  const here = piece(state.at);
  for (let node = 0; node < window.nodes; node++) {
    if (window.beyond[node] > 0 && piece(node) !== here) return null;
  }
  if (rest === 0) return state.cost;
  const own = pieces(window, state.left, false);
  const open = new Set<number>();
  for (let node = 0; node < window.nodes; node++) if (window.exit[node]) open.add(own(node));
  for (let edge = 0; edge < state.left.length; edge++) {
    if (state.left[edge] > 0 && !open.has(own(window.from[edge]))) return null;
  }
  return state.cost + POSTPONED * rest;
}

/** Fleury's rule: what remains must hang together with the needle's place, or with what lies beyond. */
function finishable(window: Window, left: readonly number[], at: number): boolean {
  const piece = pieces(window, left, !window.last);
  const here = piece(at);
  for (let edge = 0; edge < left.length; edge++) {
    if (left[edge] > 0 && piece(window.from[edge]) !== here) return false;
  }
  if (window.last) return true;
  const near = pieces(window, left, false);
  const own = near(at);
  for (let edge = 0; edge < window.older; edge++) {
    if (left[edge] > 0 && near(window.from[edge]) !== own) return false;
  }
  for (let node = 0; node < window.nodes; node++) if (window.exit[node] && near(node) === own) return true;
  return false;
}

function pieces(window: Window, left: readonly number[], beyond: boolean): (node: number) => number {
  const parent: number[] = [];
  for (let node = 0; node < window.nodes; node++) parent.push(node);
  const find = (node: number): number => {
    let n = node;
    while (parent[n] !== n) n = parent[n];
    return n;
  };
  for (let edge = 0; edge < left.length; edge++) {
    if (left[edge] > 0) parent[find(window.to[edge])] = find(window.from[edge]);
  }
  if (beyond) {
    const first: number[] = [];
    for (let node = 0; node < window.nodes; node++) {
      const name = window.beyond[node];
      if (name === 0) continue;
      if (first[name] === undefined) first[name] = node;
      else parent[find(node)] = find(first[name]);
    }
  }
  return find;
}

function stepsTo(state: State): number[] {
  const steps: number[] = [];
  for (let at: State = state; at.back !== null; at = at.back) steps.push(at.step);
  return steps.reverse();
}
